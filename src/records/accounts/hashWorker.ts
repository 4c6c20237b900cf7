import { parentPort } from "node:worker_threads";
import { encodedHash, type HashCost, isSecretOf } from "./hasher.ts";

/** What is asked of the thread: a new hash, or whether a secret fits one. */
export type HashCall = { readonly id: number; readonly secret: string } & (
  | { readonly salt: Uint8Array; readonly cost: HashCost }
  | { readonly encoded: string }
);

export type HashAnswer = { readonly id: number } & ({ readonly value: string | boolean } | { readonly message: string });

const port = parentPort;
if (port === null) throw new Error("This file is the thread that hashes passwords; it does nothing when run by itself.");

port.on("message", async (call: HashCall) => {
  const { id } = call;
  try {
    const value = "salt" in call ? await encodedHash(call.secret, call.salt, call.cost) : await isSecretOf(call.secret, call.encoded);
    port.postMessage({ id, value } satisfies HashAnswer);
  } catch (error) {
    // The kind alone: a message could quote what was hashed.
    port.postMessage({ id, message: error instanceof Error ? error.name : typeof error } satisfies HashAnswer);
  }
});
