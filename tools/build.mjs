/** `npm run build`: compiles every floor into dist/ and bundles the web page. */
import { bundleWeb, compile, requireNode } from "./setup.mjs";

requireNode();
const compiled = await compile();
process.exitCode = compiled === 0 ? await bundleWeb() : compiled;
