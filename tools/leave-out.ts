import { leaveOutAll } from "./leaveOut/leaveOut.ts";

const results = await leaveOutAll("first red", (done, of, name) => console.error(`${done} of ${of}: ${name}`));
for (const { term, red } of results) console.log(`${red.length > 0 ? "red  " : "GREEN"} ${term.name}: ${red[0] ?? "no test noticed"}`);
const unnoticed = results.filter(({ red }) => red.length === 0);
if (unnoticed.length > 0) {
  console.error(`${unnoticed.length} terms can be left out without a test noticing.`);
  process.exitCode = 1;
}
