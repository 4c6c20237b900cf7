/** Why the records refuse, or cannot; by the kind of fault. */
export const RECORDS_FAULT = {
  notFound: (about) => `There is no ${about}.`,
  changedMeanwhile: (about) => `Somebody else has changed ${about} meanwhile; nothing was written.`,
  refused: (about) => `Not done: ${about} cannot be written like that.`,
  keyReused: (about) => `The key ${about} stands for another request.`,
  busy: (about) => `Another program is using ${about}. Stop it, or try again.`,
  readOnly: (about) => `${about} may not be written to. Check who owns it, and what may be done with it.`,
  full: (about) => `There is no room left for ${about}. Nothing that was kept before is lost.`,
  damaged: (about) => `${about} is damaged, and was left as it is. Restore the last backup: gritwright restore FILE FOLDER.`,
  unreadable: (about) =>
    `${about} cannot be read by this version. It was left as it is; the room Shop shows it, and takes one that is right.`,
  newerWriter: (about) =>
    `A newer Gritwright (${about}) has been here and asks older ones only to read. Nothing was written: use that one.`,
  newerSchema: (about) => `The records were written by a newer Gritwright (${about}). Use that one; this one has changed nothing.`,
  frozen: (about) => `These records are frozen: ${about}.`,
  notReachable: (about) => `${about} cannot be reached.`,
  folderGone: (about) =>
    `${about} has been moved, deleted or changed for another file while it was open. Nothing was written. Put it back, or restore a backup.`,
  badBackup: (about) => `${about} is no sound backup; nothing was changed.`,
} as const satisfies Record<string, (about: string) => string>;

export const RECORDS = {
  noShop: (folder: string) => `${folder} holds no records of a shop`,
  backup: (path: string, megabytes: string) => `Backup made: ${path}, ${megabytes} MB.`,
  notDue: "No backup is due.",
  takenOut: (count: number) => `${count} older backups taken out.`,
  sound: (path: string, madeAt: string) => `${path} is sound. Made ${madeAt}.`,
  counted: (count: number, kind: string) => `  ${String(count).padStart(8)}  ${kind}`,
  missing: (name: string) => `  lost before the backup was made: ${name}`,
  restored: (madeAt: string) => `Restored as of ${madeAt}.`,
  restoredWithout: (count: number) =>
    count === 1
      ? "Everything but 1 photo or file, which is missing or damaged beside the backup and not in the records of before either:"
      : `Everything but ${count} photos and files, which are missing or damaged beside the backup and not in the records of before either:`,
  restoredWithoutOne: (name: string) => `  left out: ${name}`,
  mayRestoreWithout: "an option of restore, which then restores everything else and names what was left out",
  safety: (folder: string) => `What was there before lies in ${folder}`,
  exported: (count: number, folder: string) =>
    `${count} files written to ${folder}. They hold personal data: keep them as you keep the shop's records.`,
  exportThere: (folder: string, name: string) => `${folder} holds ${name} already, and nothing is written over.`,
  preview: (rows: number, there: number) => `${rows} rows, ${there} of them there already. Nothing has been written; --apply does it.`,
  feeds: (column: string, field: string) => `  ${column} → ${field}`,
  leftOut: (column: string) => `  ${column} is left out`,
  badRow: (row: number, column: string, value: string, allowed: string) => `  line ${row}, ${column}: "${value}". Allowed: ${allowed}.`,
  imported: (added: number, there: number, id: string) =>
    `${added} added, ${there} there already. To take it back: gritwright undo ${id} FOLDER`,
  shop: (name: string, id: string) => `  ${id}  ${name}`,
  noShops: "There is no shop yet.",
  shopAdded: (name: string, id: string) => `Added ${name}, ${id}.`,
  carried: (what: string, count: number) => `${what}: ${count}`,
  moved: (rows: number, files: number, to: string) =>
    `Everything lies in ${to}: ${rows} rows and ${files} files, each compared on both sides.`,
  movedBefore: (to: string) => `It had been moved to ${to} before; nothing was done.`,
  movedFrom: (from: string) =>
    `What lies in ${from} is frozen: no program opens it any more. To take it back: gritwright move --take-back --from ${from}`,
  takenBack: (from: string) => `What lies in ${from} is open again. What was written elsewhere since is not in it.`,
  undone: (count: number) => `${count} taken out again.`,
} as const;
