import type { Account, SignedInSession } from "#contract/records/account";
import type { Role } from "#contract/records/roles";

/** What somebody tries to come in with. */
export interface SignInTried {
  readonly signInName: string;
  readonly password: string;
  /** Network address it comes from; vain tries are counted by it too. */
  readonly address: string;
  /** What the browser was given to be known by when this person came in there before; null where it has nothing. */
  readonly device?: string | null;
}

/** A session that has just begun; the token is handed out this once. */
export interface Begun {
  readonly kind: "in";
  readonly token: string;
  readonly session: LiveSession;
}

/** A password also makes the device known. */
export interface CameIn extends Begun {
  readonly device: string;
}

/** `wrong`: name or password, and which of them is not said. `wait`: too many vain tries. */
export type NotIn = { readonly kind: "wrong" } | { readonly kind: "wait"; readonly seconds: number };
/** `off`: after five wrong ones the person's password is needed. */
export type NotChanged = { readonly kind: "wrong" } | { readonly kind: "off" };

export interface LiveSession {
  readonly id: string;
  readonly personId: string;
  readonly role: Role;
  /** When it ends at the latest, ms since 1970. */
  readonly endsAt: number;
  /** Whose password began it: another person's where a PIN has changed the person since. */
  readonly begunBy: string;
}

/** The session of a token, and a new token where it was time for one. */
export interface Recognised {
  readonly session: LiveSession;
  readonly renewed: string | null;
}

export interface AccountWritten {
  readonly signInName: string;
  readonly role: Role;
  readonly password: string;
}

export interface AccountChange {
  readonly signInName?: string | undefined;
  readonly role?: Role | undefined;
  readonly password?: string | undefined;
  /** null takes it away. */
  readonly pin?: string | null | undefined;
}

/** Who may come in, and who is in. Nothing here ever hands out a hash; the audit trail says that a password was set, not which. */
export interface Accounts {
  /** Whether anybody has a password yet. */
  any(): Promise<boolean>;
  list(): Promise<readonly Account[]>;
  /**
   * Gives a person a way in. The first one must be an owner's.
   *
   * @throws {RecordsFault} `notFound`, `refused` for names that are taken, passwords that are too easy, a person who has one already
   */
  open(personId: string, written: AccountWritten, by: string): Promise<Account>;
  /**
   * Changes the given fields. A new password ends the sessions that the person is in or has begun, a new PIN those that the old one opened; all but `keep`.
   *
   * @param keep id of the session that goes on
   * @throws {RecordsFault} `notFound`; `refused` also where no owner would be left
   */
  change(personId: string, change: AccountChange, by: string, keep?: string): Promise<Account>;
  /** Takes a person's way in away and ends the sessions that the person is in or has begun. @throws {RecordsFault} `notFound`; `refused` for the last owner */
  close(personId: string, by: string): Promise<void>;
  /** Whether it is the password of somebody who is in; vain tries make the next one wait. Null: it is. */
  doubt(personId: string, password: string): Promise<NotIn | null>;
  signIn(tried: SignInTried): Promise<CameIn | NotIn>;
  /** Another person takes over at the same browser: the session ends and another begins that lasts no longer than it would have. */
  changePerson(
    from: LiveSession,
    to: { readonly personId: string; readonly pin: string; readonly address: string },
  ): Promise<Begun | NotChanged>;
  /** Whose token it is; null where it is nobody's, or the session is over. */
  recognise(token: string): Promise<Recognised | null>;
  isLive(sessionId: string): Promise<boolean>;
  /** Newest first; those of one person, or all. */
  sessions(personId: string | null): Promise<readonly SignedInSession[]>;
  endSession(id: string): Promise<void>;
  /** Everybody of every shop of the database signs in anew: after a restore, when what lies in the backup may be in other hands. */
  endAllSessions(): Promise<void>;
  /** Tells when sessions have ended otherwise than by time. Returns how to stop. */
  watchEnds(tell: () => void): () => void;
  /**
   * The way back for whoever owns the machine: sets the password of a sign-in name; where nobody has one, makes the shop's first person its owner under this name.
   *
   * @throws {RecordsFault} `notFound`, `refused`
   */
  setPassword(signInName: string, password: string): Promise<Account>;
}
