import { expect, it } from "vitest";
import { whyNotInstalled } from "../../tools/whyNotInstalled.mjs";

/* What npm 10 printed on standard error when each was brought about, shortened to the lines that say why. */
const SAID: readonly [string, RegExp][] = [
  [
    "npm error code ENOTFOUND\nnpm error syscall getaddrinfo\nnpm error network request to https://registry.invalid/hono failed, reason: getaddrinfo ENOTFOUND registry.invalid",
    /was not reached.*connection/,
  ],
  [
    "npm error code ECONNREFUSED\nnpm error errno ECONNREFUSED\nnpm error FetchError: request to http://127.0.0.1:9/hono failed",
    /was not reached/,
  ],
  [
    "npm error code EACCES\nnpm error syscall mkdir\nnpm error path /nonexistent/.npm\nnpm error errno EACCES",
    /may not be written to.*npm config get cache/,
  ],
  ["npm error code ENOENT\nnpm error syscall mkdir\nnpm error path /proc/1/none", /What npm says above/],
  ["npm error code ENOSPC\nnpm error errno -28", /disk is full/],
  ["npm error code EINTEGRITY\nnpm error sha512-x integrity checksum failed", /damaged/],
  [
    "npm error code EUSAGE\nnpm error `npm ci` can only install packages when your package.json and package-lock.json are in sync.",
    /do not belong together/,
  ],
  ["npm error code E401\nnpm error Unable to authenticate", /refuses/],
  ["npm error gyp ERR! find Python\nnpm error gyp ERR! configure error", /apt-get install python3 make g\+\+/],
  ["npm error code UNABLE_TO_VERIFY_LEAF_SIGNATURE", /certificate is not trusted/],
];

it.each(SAID)("%s", (said, meant) => {
  expect(whyNotInstalled(said)).toMatch(meant);
  expect(whyNotInstalled(said)).toMatch(/^npm ci did not succeed\. /);
});
