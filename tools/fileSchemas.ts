/** Writes docs/*.schema.json from the schemas that the program checks files with. Run: npx tsx --conditions=source tools/fileSchemas.ts */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { FILE_KINDS, publishedSchema, schemaFile } from "#contract/publishedSchema";

for (const kind of FILE_KINDS)
  writeFileSync(join(import.meta.dirname, "..", "docs", schemaFile(kind)), `${JSON.stringify(publishedSchema(kind), null, 2)}\n`);
