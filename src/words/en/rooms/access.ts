/** English text of signing in, of the person in the bar, and of who may come in. */
export const ACCESS = {
  title: "Sign in",
  name: "Name to sign in with",
  password: "Password",
  signIn: "Sign in",
  signingIn: "Signing in …",
  forgotten:
    "Forgotten? An owner sets a new one in the room Shop. For an owner's own, docs/server.md says what to do at the shop's machine.",
  waitsHere: (count: number) =>
    count === 1
      ? "1 thing that was written here waits in this browser. It is sent when whoever wrote it signs in."
      : `${count} things that were written here wait in this browser. Each is sent when whoever wrote it signs in.`,
  othersWait: (count: number) =>
    count === 1
      ? "1 thing that somebody else wrote here is sent when that person signs in here."
      : `${count} things that somebody else wrote here are sent when that person signs in here.`,

  roles: { reader: "looks only", counter: "counter", technician: "technician", owner: "owner" },
  rolesMay: {
    reader: "sees work, balls and customers; no money",
    counter: "takes in, hands out, takes money; customers",
    technician: "also the bench: stages, readings, stock, lanes",
    owner: "everything: prices, people, settings, backups",
  },

  open: (initials: string, name: string) => `${initials} · ${name}`,
  openName: "Who is signed in",
  takeOver: "Somebody else takes over",
  takeOverWho: "Who",
  pin: "PIN",
  pinHelp: "4 to 8 digits",
  change: "Take over",
  noTakers: "Nobody else has a PIN. Everybody sets one's own, here, after signing in.",
  pinOffFor: (name: string) => `${name} (PIN is off)`,
  signOut: "Sign out",
  signOutWaits: (count: number) =>
    count === 1
      ? "1 thing still waits to be sent. It stays in this browser until you sign in here again. What was read from the shop is thrown away here."
      : `${count} things still wait to be sent. They stay in this browser until you sign in here again. What was read from the shop is thrown away here.`,
  signOutAnyway: "Sign out all the same",
  stay: "Stay",
  close: "Close",

  own: "Your password and PIN",
  ownPassword: "Your password so far",
  ownPasswordAsked: "Your own password",
  newPassword: "New password",
  newPasswordHelp: "10 letters or more; a few words are easier than signs. Your other browsers are signed out.",
  setPassword: "Set the password",
  newPin: "New PIN",
  newPinHelp: "4 to 8 digits; empty takes it away",
  setPin: "Set the PIN",
  kept: "Kept.",

  signIns: "Who may come in",
  firstWhy:
    "Nobody has a password yet: whoever sits at this machine may do everything. With the first password that ends, here too. It makes its person the owner, who then gives the others theirs.",
  signInsWhy: "Each role may do what those before it may. A new password signs the person out everywhere.",
  columns: { person: "Person", name: "Signs in as", role: "Role", pin: "PIN" },
  hasPin: "yes",
  noPin: "no",
  pinIsOff: "off, until the password was used",
  none: "no password",
  role: "Role",
  give: "Give a password",
  giveTo: (name: string) => `Give a password: ${name}`,
  changeOf: (name: string) => `Change: ${name}`,
  changeShort: "Change",
  passwordFor: "Password for the person",
  passwordStays: "empty: stays as it is",
  takePin: "Take the PIN away",
  takeAway: "Take the sign-in away",
  keep: "Keep",
  leave: "Leave as it is",

  sessions: "Signed in now",
  sessionColumns: { person: "Who", since: "since", seen: "last seen", from: "from" },
  here: "this browser",
  end: "End",
  endOf: (name: string, seen: string) => `End: ${name}, last seen ${seen}`,

  notForRole: "Your role does not allow this. An owner can change that in the room Shop.",
  notForRoom: (role: string) => `This room is for: ${role}.`,
  notSignedIn: "Nobody is signed in here any more. Sign in; what you wrote is still there.",
  wrongSecret: "That is not right. Nothing was changed.",
  wrongSignIn: "Name or password is wrong.",
  pinOff: "Too many wrong PINs. The person signs in with the password once, then the PIN works again.",
  otherPerson: "Somebody else is signed in at this browser meanwhile.",
  waitFirst: (seconds: number) => `Too many vain tries. Try again in ${seconds} s.`,
} as const;
