/**
 * Every way in which a request can fail, by the last part of its `type`; the status that goes with it, and a title that is the same each time (RFC 9457).
 */
export const PROBLEM_KINDS = {
  notRead: { status: 400, title: "The request could not be read" },
  keyMissing: { status: 400, title: "This request needs an Idempotency-Key" },
  forwarded: { status: 400, title: "This server takes no forwarded requests" },
  notSignedIn: { status: 401, title: "Somebody must sign in first" },
  wrongSecret: { status: 403, title: "Name or password is wrong" },
  passwordWanted: { status: 403, title: "The own password is wanted once more" },
  pinOff: { status: 403, title: "Too many wrong PINs: the password is needed" },
  notForRole: { status: 403, title: "The role does not allow this" },
  notFromHere: { status: 403, title: "Only pages of this server may ask" },
  notFound: { status: 404, title: "There is no such thing" },
  methodNotAllowed: { status: 405, title: "This cannot be done here" },
  notNow: { status: 409, title: "This cannot be done in the present state" },
  otherPerson: { status: 409, title: "Somebody else is signed in at this browser meanwhile" },
  changedMeanwhile: { status: 412, title: "Somebody else changed it meanwhile" },
  tooLarge: { status: 413, title: "The request is too large" },
  wrongType: { status: 415, title: "This kind of content is not taken" },
  misdirected: { status: 421, title: "This server does not go by that name" },
  invalid: { status: 422, title: "Something in the request is not allowed" },
  keyReused: { status: 422, title: "This key was used for another request" },
  versionMissing: { status: 428, title: "A change needs the version it was made on" },
  waitFirst: { status: 429, title: "Too many vain tries" },
  tooMany: { status: 429, title: "Too much is being asked at once" },
  broken: { status: 500, title: "Something of ours broke" },
  damaged: { status: 500, title: "A file of the records cannot be used" },
  busy: { status: 503, title: "The records are busy" },
  folderGone: { status: 503, title: "The folder of the records is not where it was" },
  closing: { status: 503, title: "The server is closing" },
  notWritable: { status: 507, title: "The records cannot be written" },
} as const satisfies Readonly<Record<string, { readonly status: number; readonly title: string }>>;
export type ProblemKind = keyof typeof PROBLEM_KINDS;

export const TYPE_PREFIX = "urn:gritwright:problem:";

/** The `type` of a kind of problem. */
export function problemType(kind: ProblemKind): `${typeof TYPE_PREFIX}${ProblemKind}` {
  return `${TYPE_PREFIX}${kind}`;
}
