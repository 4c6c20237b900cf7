/** What npm's codes mean, by the beginning, and what to do. The first that is found in what it said is told. */
const CAUSES = [
  [/\bENOSPC\b/, "The disk is full. Make room, and start again."],
  [/\bEINTEGRITY\b/, "A package came damaged. Try: npm cache verify, and start again."],
  [
    /\bEUSAGE\b|can only install packages when your package\.json and package-lock\.json/,
    "package.json and package-lock.json do not belong together: take both from the same version (git checkout package.json package-lock.json).",
  ],
  [/\bE40[13]\b|\bE407\b/, "The npm registry, or a proxy before it, refuses. Ask: npm config get registry, npm config get proxy."],
  [/\bE404\b|\bETARGET\b/, "The npm registry that is set does not have a package that is wanted. Ask: npm config get registry."],
  [
    /\b(?:EACCES|EPERM|EROFS|ENOTDIR)\b/,
    "A folder may not be written to: npm's cache (npm config get cache), or this one. Do not start as another user than the one they belong to.",
  ],
  [
    /\b(?:ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ERR_SOCKET_TIMEOUT|ENETUNREACH|EHOSTUNREACH)\b/,
    "The npm registry was not reached. Is there a connection, or a proxy to be set (npm config set proxy)?",
  ],
  [
    /CERT_|SELF_SIGNED|UNABLE_TO_(?:GET|VERIFY)/,
    "The npm registry's certificate is not trusted on this machine: something reads along, or the clock is wrong.",
  ],
  [
    /gyp ERR!|node-gyp/,
    "A package with native code was neither to be had built nor compiled. On Debian: apt-get install python3 make g++; on macOS: xcode-select --install; on Windows: Visual Studio's build tools.",
  ],
];

/**
 * Why `npm ci` did not succeed, and what to do.
 *
 * @param {string} said all that it said on standard error
 * @returns {string}
 */
export function whyNotInstalled(said) {
  const known = CAUSES.find(([pattern]) => /** @type {RegExp} */ (pattern).test(said));
  return `npm ci did not succeed. ${known === undefined ? "What npm says above is the reason." : known[1]}`;
}
