/** Writes docs/job-file.schema.json from the schema that the program checks job files with. Run: npx tsx --conditions=source tools/jobFileSchema.ts */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { publishedSchema } from "#contract/job/publishedSchema";

writeFileSync(join(import.meta.dirname, "..", "docs", "job-file.schema.json"), `${JSON.stringify(publishedSchema(), null, 2)}\n`);
