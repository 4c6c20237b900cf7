import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { jobFileSchema } from "#contract/job/jobFile";
import { type PlanDocument, planDocumentSchema } from "#contract/planDocument";
import { built, EXAMPLES } from "./commandLine.ts";

/**
 * The plans of the examples as they were last approved. Not a claim that they are right (test/truth is for that), but no change of the model
 * goes unseen. Approve with APPROVE=1 npx vitest run test/cli/golden.test.ts, and say in the commit why they moved.
 */
const APPROVED = join(import.meta.dirname, "approved");

/** `Math.exp` and its like differ between machines in the last bits; these are far above that and below what a shop would notice. */
const TOLERANCES: Readonly<Record<string, number>> = {
  laydownBoard: 0.01,
  launchAngleDeg: 0.01,
  boardAtPins: 0.05,
  entryAngleDeg: 0.03,
  hookStartFt: 0.1,
  rollStartFt: 0.1,
  slipAtPinsMps: 0.02,
  speedAtPinsMph: 0.02,
  chance: 0.005,
};

/** What of a plan is compared. Intervals and shares stand on draws near a threshold and may flip with the last bits. */
function essence(plan: PlanDocument) {
  return {
    pick: plan.pick === null ? null : { finish: plan.pick.finish, plateau: plan.pick.plateau, cliff: plan.pick.cliff },
    // What is worth measuring stands on differences of hundredths, which last bits may turn round.
    messages: plan.messages.map(({ id }) => id).filter((id) => !id.startsWith("message.measure.")),
    rules: plan.rules.map(({ rule, agrees }) => `${rule}: ${agrees ? "agrees" : "disagrees"}`),
    cautions: plan.cautions.map(({ id }) => id),
    defaults: plan.defaults,
    candidates: plan.candidates.map((candidate) => ({
      finish: candidate.finish,
      laydownBoard: candidate.line?.laydownBoard ?? null,
      launchAngleDeg: candidate.line?.launchAngleDeg ?? null,
      boardAtPins: candidate.boardAtPins,
      entryAngleDeg: candidate.entryAngleDeg,
      hookStartFt: candidate.hookStartFt,
      rollStartFt: candidate.rollStartFt,
      slipAtPinsMps: candidate.slipAtPinsMps,
      speedAtPinsMph: candidate.speedAtPinsMph,
      chance: candidate.chance?.value ?? null,
    })),
  };
}

type Essence = ReturnType<typeof essence>;

/** The same essence with every figure that is near the approved one replaced by it, so that what is left differs by more than the tolerance. */
function withinTolerance(found: Essence, approved: Essence): Essence {
  const candidates = found.candidates.map((candidate, index) => {
    const reference: Record<string, unknown> = { ...approved.candidates[index] };
    const entries = Object.entries(candidate).map(([key, value]) => {
      const wanted = reference[key];
      const isNear = typeof value === "number" && typeof wanted === "number" && Math.abs(value - wanted) <= TOLERANCES[key];
      return [key, isNear ? wanted : value];
    });
    return Object.fromEntries(entries) as Essence["candidates"][number];
  });
  return { ...found, candidates };
}

/** Job files with oil on the lane; the other examples ask for something else. */
const PLANS = readdirSync(EXAMPLES).filter((name) => name.endsWith(".yaml") && isJobWithOil(readFileSync(join(EXAMPLES, name), "utf8")));

function isJobWithOil(text: string): boolean {
  const job = jobFileSchema.safeParse(parse(text));
  return job.success && job.data.lane.friction === undefined;
}

describe("the plan of an example is the approved one", () => {
  it.each(PLANS)("%s", { timeout: 120_000 }, async (name) => {
    const { code, stdout } = await built("plan", join(EXAMPLES, name), "--json", "--workers", "2");
    expect(code).toBe(0);
    const found = essence(planDocumentSchema.parse(JSON.parse(stdout)));
    const file = join(APPROVED, name.replace(".yaml", ".json"));
    if (process.env.APPROVE === "1") {
      mkdirSync(APPROVED, { recursive: true });
      writeFileSync(file, `${JSON.stringify(found, null, 2)}\n`);
    }
    expect(existsSync(file), `${file} is not there; see the head of this test`).toBe(true);
    const approved: Essence = JSON.parse(readFileSync(file, "utf8"));
    expect(withinTolerance(found, approved)).toEqual(approved);
  });
});
