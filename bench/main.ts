/** `npm run bench`: seeded, prints medians and ratios against references measured in the same run. */
import { bagRows } from "./bag.ts";
import { carryRows } from "./carry.ts";
import { motionRows } from "./motion.ts";
import { padWorkRows } from "./padWork.ts";
import { planRows } from "./plan.ts";
import { profileRows } from "./profile.ts";

for (const { what, value, ratio } of [
  ...motionRows(),
  ...(await planRows()),
  ...(await bagRows()),
  ...(await carryRows()),
  ...profileRows(),
  ...padWorkRows(),
])
  console.log(`${what}: ${value}${ratio === "" ? "" : `, ${ratio}`}`);
