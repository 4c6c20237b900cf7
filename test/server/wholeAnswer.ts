import { setTimeout as sleep } from "node:timers/promises";
import { unzipSync } from "fflate";
import type { Route } from "#contract/routes/route";
import type { ShopServer } from "./shopServer.ts";

/** Most that a stream is given for its first event, ms. */
const FIRST_EVENT_MS = 5000;

export interface CheckedRequest {
  readonly params?: Record<string, string>;
  readonly query?: Record<string, string>;
  readonly body?: unknown;
  readonly headers?: Record<string, string>;
}

/** Everything that came back, as text; what lies in a zip too, and of events the first. */
export async function answerOf(server: ShopServer, route: Route, asked: CheckedRequest): Promise<{ status: number; text: string }> {
  const { params = {}, query = {}, body } = asked;
  const path = route.path.replace(/:(\w+)/g, (_, param: string) => encodeURIComponent(params[param] ?? ""));
  const isFile = body instanceof Uint8Array;
  const type = route.body?.kind === "file" ? (route.body.types.find((one) => one !== "image/jpeg") ?? "") : "application/json";
  const response = await server.raw(`${path}?${new URLSearchParams(query)}`, {
    method: route.method.toUpperCase(),
    headers: { "content-type": type, "if-match": '"1"', "idempotency-key": crypto.randomUUID(), ...asked.headers },
    ...(body === undefined ? {} : { body: isFile ? new Uint8Array(body) : JSON.stringify(body) }),
  });
  const headers = JSON.stringify([...response.headers]);
  if (response.status === 200 && route.answer.kind === "events") return { status: 200, text: headers + (await firstEvent(response)) };
  const bytes = new Uint8Array(await response.arrayBuffer());
  const isZip = response.headers.get("content-type") === "application/zip";
  const files = isZip
    ? Object.entries(unzipSync(bytes)).map(([name, file]) => name + Buffer.from(file).toString())
    : [Buffer.from(bytes).toString()];
  return { status: response.status, text: headers + files.join("\n") };
}

async function firstEvent(response: Response): Promise<string> {
  const reader = response.body?.getReader();
  const first = await Promise.race([reader?.read(), sleep(FIRST_EVENT_MS, null)]);
  await reader?.cancel();
  if (first?.value === undefined) throw new Error("The stream told nothing.");
  return Buffer.from(first.value).toString();
}
