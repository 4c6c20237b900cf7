import { argon2id, argon2Verify } from "hash-wasm";

/** Makes what is kept of a password, and looks whether another one fits it. */
export interface SecretHasher {
  /** @returns cost, salt and digest as one text, `$argon2id$v=19$…` */
  hash(secret: string): Promise<string>;
  isRight(secret: string, encoded: string): Promise<boolean>;
  /** What nobody's secret fits, at the same cost: unknown names are answered as slowly as known ones. */
  readonly decoy: string;
  close(): Promise<void>;
}

/** What one hash costs (RFC 9106): memory in KiB, passes over it. One lane. */
export interface HashCost {
  readonly memoryKib: number;
  readonly passes: number;
}

/** The least that OWASP's Password Storage Cheat Sheet advises for argon2id: 19 MiB, two passes, one lane. */
export const USUAL_COST: HashCost = { memoryKib: 19_456, passes: 2 };

const DIGEST_BYTES = 32;
/** RFC 9106, 3.1: 16 bytes of salt are recommended for passwords. */
export const SALT_BYTES = 16;

export function encodedHash(secret: string, salt: Uint8Array, { memoryKib, passes }: HashCost): Promise<string> {
  return argon2id({
    password: secret,
    salt,
    memorySize: memoryKib,
    iterations: passes,
    parallelism: 1,
    hashLength: DIGEST_BYTES,
    outputType: "encoded",
  });
}

export function isSecretOf(secret: string, encoded: string): Promise<boolean> {
  return argon2Verify({ password: secret, hash: encoded });
}

/** A digest of nothing but noughts: to find what fits it is as hard as to invert the function. */
export function decoyOf({ memoryKib, passes }: HashCost): string {
  const unpadded = (bytes: number) => Buffer.alloc(bytes).toString("base64").replaceAll("=", "");
  return `$argon2id$v=19$m=${memoryKib},t=${passes},p=1$${unpadded(SALT_BYTES)}$${unpadded(DIGEST_BYTES)}`;
}

/** Hashes where it is called: for costs that nobody notices. */
export function hasherHere(cost: HashCost, randomBytes: (count: number) => Uint8Array): SecretHasher {
  return {
    hash: (secret) => encodedHash(secret, randomBytes(SALT_BYTES), cost),
    isRight: isSecretOf,
    decoy: decoyOf(cost),
    close: () => Promise.resolve(),
  };
}
