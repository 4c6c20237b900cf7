import { type APIRequestContext, expect } from "@playwright/test";

interface Signing {
  /** Kinds of stages; all of them where it is left out. */
  readonly kinds?: readonly string[];
  /** Address of the server, where it is not the one of every test. */
  readonly at?: string;
  readonly doneAt?: string;
}

/** Signs stages of a ticket's plan as it is now, as the guide of another device would. */
export async function signStages(request: APIRequestContext, ticketId: string, { kinds, at = "", doneAt }: Signing = {}): Promise<void> {
  const read = async (path: string) => (await request.get(`${at}/api/${path}`)).json();
  const { items: people } = await read("people?state=works%20here&order=oldest%20first");
  const { stages, revision } = await read(`tickets/${ticketId}`);
  for (const { id: stageId, kind, abrasive, sideIds } of stages) {
    if (kinds !== undefined && !kinds.includes(kind)) continue;
    const { id: personId, initials } = people[0];
    const signed = { ticketId, stageId, revision, kind, abrasive, sidesDone: sideIds, personId, initials };
    const data = { ...signed, doneAt: doneAt ?? new Date().toISOString() };
    const answer = await request.post(`${at}/api/stages-done`, { data, headers: { "Idempotency-Key": crypto.randomUUID() } });
    expect(answer.ok(), await answer.text()).toBe(true);
  }
}
