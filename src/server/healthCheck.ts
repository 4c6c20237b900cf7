import { healthOf } from "./program/wellness.ts";

/** Whether the server on a port of this machine is well, encrypted or not; for what watches a container. It ends with 0 where it is. */
const port = Number(process.argv[2]);
const answers = await Promise.all([true, false].map((isEncrypted) => healthOf({ address: "127.0.0.1", port, isEncrypted })));
process.exitCode = answers.some((version) => version !== null) ? 0 : 1;
