import { randomBytes } from "node:crypto";
import { writeSync } from "node:fs";
import Sqlite from "better-sqlite3";
import { openRecords } from "#records/openRecords";
import { PNG } from "./pictures.ts";

/*
 * Writes until it is killed, and says each id after the write has been acknowledged. Arguments: the folder, and a setting of `synchronous`
 * to plant in place of ours, or the address of a PostgreSQL database.
 */

const [folder, second] = process.argv.slice(2);
const postgres = second?.startsWith("postgres://") === true ? second : null;
const planted = postgres === null ? second : undefined;
if (planted !== undefined) {
  const pragma = Sqlite.prototype.pragma;
  Sqlite.prototype.pragma = function (source, options) {
    return pragma.call(this, withPlanted(source), options);
  };
  const own = process.getBuiltinModule?.("node:sqlite") as { DatabaseSync: { prototype: { prepare(sql: string): unknown } } } | undefined;
  if (own !== undefined) {
    const { prepare } = own.DatabaseSync.prototype;
    own.DatabaseSync.prototype.prepare = function (sql) {
      return prepare.call(this, withPlanted(sql));
    };
  }
}

function withPlanted(source: string): string {
  return source.replace(/synchronous = .*/, `synchronous = ${planted}`);
}

const records = await openRecords({
  folder,
  ...(postgres === null ? {} : { postgres }),
  now: Date.now,
  randomBytes,
  programVersion: "0.0.0-test",
});
const by = (await records.people.list()).items[0].id;
writeSync(1, "ready\n");
for (let i = 0; ; i += 1) {
  const bowler = await records.bowlers.create({ name: `Invented ${i}`, notes: "x".repeat(i % 700) }, { by });
  writeSync(1, `bowlers ${bowler.id}\n`);
  if (i % 10 !== 9) continue;
  const photo = await records.photos.add({ bowlerId: bowler.id, of: "other", note: `${i}` }, PNG, { by });
  writeSync(1, `photos ${photo.id}\n`);
}
