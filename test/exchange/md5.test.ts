import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { md5 } from "#exchange/measured/md5";

/** RFC 1321, section A.5. Published. */
test.each([
  ["", "d41d8cd98f00b204e9800998ecf8427e"],
  ["a", "0cc175b9c0f1b6a831c399e269772661"],
  ["abc", "900150983cd24fb0d6963f7d28e17f72"],
  ["message digest", "f96b697d7cb7938d525a2f31aaf161d0"],
  ["abcdefghijklmnopqrstuvwxyz", "c3fcd3d76192e4007dfb496cca67e13b"],
  ["ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789", "d174ab98d277d9f5a5611c2c9f419d9f"],
  ["12345678901234567890123456789012345678901234567890123456789012345678901234567890", "57edf4a22be3c955ac49da2e2107b67a"],
])("the digest of %j is the one that the standard prints", (text, digest) => {
  expect(md5(new TextEncoder().encode(text))).toBe(digest);
});

test("any bytes, also a part of a larger buffer, have the digest that the platform's own library gives", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat({ max: 20 }), (bytes, skipped) => {
      const part = bytes.subarray(Math.min(skipped, bytes.length));
      expect(md5(part)).toBe(createHash("md5").update(part).digest("hex"));
    }),
  );
});
