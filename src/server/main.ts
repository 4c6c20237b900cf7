import { serve } from "./serve.ts";

/** What `npm start` runs: the server alone, without the commands. */
process.exitCode = await serve(process.argv.slice(2));
