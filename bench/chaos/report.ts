import type { Outcome } from "./drill.ts";

export interface Done {
  readonly name: string;
  readonly outcomes: readonly Outcome[];
  readonly seconds: number;
}

const HEADING = [
  "| what is done | on | rounds | acknowledged | lost | doubled | longest freeze, ms | memory, MB | |",
  "|---|---|---:|---:|---:|---:|---:|---:|---|",
];

/** All that was done, a row each database. */
export function table(done: readonly Done[]): string {
  return [...HEADING, ...done.flatMap(({ name, outcomes }) => outcomes.map((outcome) => row(name, outcome)))].join("\n");
}

function row(name: string, outcome: Outcome): string {
  const { on, rounds, acknowledged, lost, doubled, longestFreezeMs, memoryMb, note } = outcome;
  const figures = [rounds, acknowledged, lost, doubled, longestFreezeMs, memoryMb].map((figure) =>
    figure === null ? "–" : Math.round(figure),
  );
  return `| ${name} | ${on} | ${figures.join(" | ")} | ${note} |`;
}

/** What did not hold, each with its drill; what was lost or doubled first. */
export function faultsOf(done: readonly Done[]): string[] {
  return done.flatMap(({ name, outcomes }) =>
    outcomes.flatMap(({ on, lost, doubled, broken }) => [
      ...((lost ?? 0) > 0 ? [`${name}, ${on}: ${lost} acknowledged writes lost`] : []),
      ...((doubled ?? 0) > 0 ? [`${name}, ${on}: ${doubled} writes doubled`] : []),
      ...broken.map((what) => `${name}, ${on}: ${what}`),
    ]),
  );
}

/** The page of the long runs, with what did not hold in them. */
export function reliabilityPage(done: readonly Done[], seed: number, machine: string): string {
  const faults = faultsOf(done);
  const minutes = Math.round(done.reduce((sum, { seconds }) => sum + seconds, 0) / 60);
  return `# What was done to it, and what became of it

Written by \`npm run chaos\` (seed ${seed}, ${minutes} minutes) on ${machine}; server, databases and counters on the same machine, PostgreSQL with \`fsync\` on. \`npm run chaos -- --short\` does the same with fewer rounds, and is part of the tests on a build machine.

*Acknowledged* are writes that were answered with success; *lost* those of them that were not there when read again, *doubled* those that were there more than once. *Longest freeze*: the longest time in which somebody else, who asked all the while, got no answer. *Memory*: the most that the server kept.

${table(done)}

## What did not hold

${faults.length > 0 ? faults.map((fault) => `- ${fault}.`).join("\n") : "Nothing."}

Power cuts in the middle of a write are simulated in \`test/records/durability.test.ts\`: what was written and not synced is kept or dropped by lot. See [records](records.md) for what is promised, and [decisions/records-power-cut.md](decisions/records-power-cut.md) for what a disk must do.
`;
}
