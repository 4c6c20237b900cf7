import { createHash, generateKeyPairSync, sign } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

/** A certificate of a test's own, made here so that no other program is needed. */
export interface TestCertificate {
  readonly cert: string;
  readonly key: string;
  /** SHA-256 of the public key, by which a browser can be told to take it. */
  readonly keyDigest: string;
}

/** Writes a key (P-256) and a certificate that signs itself (RFC 5280) for a name, good from yesterday for a week. */
export function certificateIn(folder: string, name: string): TestCertificate {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const publicDer = publicKey.export({ type: "spki", format: "der" });
  const day = 86_400_000;
  const who = sequence(set(sequence(oid(2, 5, 4, 3), der(0x0c, Buffer.from(name)))));
  const ecdsaWithSha256 = sequence(oid(1, 2, 840, 10045, 4, 3, 2));
  const names = sequence(oid(2, 5, 29, 17), der(0x04, sequence(der(0x82, Buffer.from(name)))));
  const body = sequence(
    der(0xa0, integer(2)),
    integer(1),
    ecdsaWithSha256,
    who,
    sequence(time(Date.now() - day), time(Date.now() + 7 * day)),
    who,
    publicDer,
    der(0xa3, sequence(names)),
  );
  const signature = Buffer.concat([Buffer.from([0]), sign("sha256", body, privateKey)]);
  const whole = sequence(body, ecdsaWithSha256, der(0x03, signature));
  const [cert, key] = [join(folder, "cert.pem"), join(folder, "key.pem")];
  const lines = (whole.toString("base64").match(/.{1,64}/g) ?? []).join("\n");
  writeFileSync(cert, `-----BEGIN CERTIFICATE-----\n${lines}\n-----END CERTIFICATE-----\n`);
  writeFileSync(key, privateKey.export({ type: "pkcs8", format: "pem" }));
  return { cert, key, keyDigest: createHash("sha256").update(publicDer).digest("base64") };
}

/** Tag, length, content (ITU-T X.690, 8.1). */
function der(tag: number, content: Buffer): Buffer {
  const { length } = content;
  const long = length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...(length < 0x80 ? [length] : long)]), content]);
}

const sequence = (...parts: Buffer[]): Buffer => der(0x30, Buffer.concat(parts));
const set = (...parts: Buffer[]): Buffer => der(0x31, Buffer.concat(parts));
const integer = (value: number): Buffer => der(0x02, Buffer.from([value]));
const time = (at: number): Buffer => der(0x17, Buffer.from(`${new Date(at).toISOString().slice(2, 19).replace(/[-T:]/g, "")}Z`));

/** Seven bits a byte, the highest bit set in all but the last (ITU-T X.690, 8.19). */
function oid(first: number, second: number, ...rest: number[]): Buffer {
  const bytes = [40 * first + second];
  for (const part of rest) {
    const groups = [part & 0x7f];
    for (let left = part >> 7; left > 0; left >>= 7) groups.unshift((left & 0x7f) | 0x80);
    bytes.push(...groups);
  }
  return der(0x06, Buffer.from(bytes));
}
