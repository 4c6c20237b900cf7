import type { Db, EngineName } from "../tables.ts";

/** One step of the schema. Once it has been released it is never altered: a change is another step, and only adds. */
export interface Step {
  readonly name: string;
  readonly apply: (db: Db, engine: EngineName) => Promise<void>;
}
