import type { Records } from "#records/records";

/** The first line of what is given, without its end. */
export async function firstLine(input: AsyncIterable<string | Uint8Array>): Promise<string> {
  let text = "";
  const decoder = new TextDecoder();
  for await (const chunk of input) {
    text += typeof chunk === "string" ? chunk : decoder.decode(chunk, { stream: true });
    if (text.includes("\n")) break;
  }
  return text.split(/\r?\n/)[0];
}

/**
 * Sets a password for whoever has the machine itself: who could change the files of the records may do this too.
 *
 * @param password from standard input, never from the command line, which every program on the machine can read
 * @returns what to tell
 * @throws {RecordsFault} `notFound`, `refused`
 */
export async function setPasswordHere(
  { accounts, people }: Pick<Records, "accounts" | "people">,
  name: string,
  password: string,
): Promise<string> {
  const { personId, signInName, role } = await accounts.setPassword(name, password);
  const person = await people.get(personId);
  return `${person.name} signs in as ${signInName} with the new password (${role}). Whoever was signed in by that name is signed out.`;
}
