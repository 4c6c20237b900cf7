/** `npm run build:kernel`: compiles the vector kernel and writes it where it is loaded from. The same source gives the same bytes on every machine. */
import { writeFileSync } from "node:fs";
import { compiledKernel, KERNEL_BYTES, kernelModule } from "./kernel/compile.ts";

writeFileSync(KERNEL_BYTES, kernelModule(await compiledKernel()));
