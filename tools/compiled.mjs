import { compile } from "./setup.mjs";

/** Before tests are run by hand: compiles what is stale, for tests run what is built. Whoever has just compiled says so by COMPILED=1. */
export default async function compileFirst() {
  if (process.env.COMPILED === "1") return;
  if ((await compile()) !== 0) throw new Error("The program does not compile.");
}
