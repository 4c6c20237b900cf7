import { describe, expect, it } from "vitest";
import { addTotals, failedInPlaywright, failedInVitest, fromPlaywright, fromVitest, NONE, totalsLine } from "../../tools/totals.mjs";

/** A report as Vitest writes it, as far as it is read. */
const vitest = (files: readonly (readonly string[])[], counts: Partial<Record<"passed" | "failed" | "pending" | "todo", number>>) => ({
  numPassedTests: counts.passed ?? 0,
  numFailedTests: counts.failed ?? 0,
  numPendingTests: counts.pending ?? 0,
  numTodoTests: counts.todo ?? 0,
  testResults: files.map(([status, ...tests]) => ({ status, assertionResults: tests.map((test) => ({ status: test })) })),
});

describe("the total at the end of npm test", () => {
  it("is what the runner counted", () => {
    const report = vitest([["passed", "passed", "passed"]], { passed: 2, pending: 1, todo: 1 });
    expect(fromVitest(report, 0)).toEqual({ passed: 2, failed: 0, skipped: 2 });
  });

  it("counts a test file that cannot be loaded, which has no test in it to fail", () => {
    const report = vitest([["failed"], ["failed", "failed", "passed"]], { passed: 1, failed: 1 });
    expect(fromVitest(report, 1)).toEqual({ passed: 1, failed: 2, skipped: 0 });
  });

  it("counts a runner that died, or that failed without saying where", () => {
    expect(fromVitest(null, 1).failed).toBe(1);
    expect(fromPlaywright(null, 1).failed).toBe(1);
    expect(fromVitest(vitest([["passed", "passed"]], { passed: 1 }), 1)).toEqual({ passed: 1, failed: 1, skipped: 0 });
  });

  it("counts a browser test that failed both times as failed, one that held when tried again as passed", () => {
    const report = { stats: { expected: 5, unexpected: 1, flaky: 1, skipped: 2 } };
    expect(fromPlaywright(report, 1)).toEqual({ passed: 6, failed: 1, skipped: 2 });
  });

  it("names what failed, with the first line of why", () => {
    const files = [
      {
        name: "/p/a.test.ts",
        status: "failed",
        assertionResults: [{ status: "failed", fullName: "adds up", failureMessages: ["\u001b[31mnot 3\u001b[0m\n at x"] }],
      },
      { name: "/p/b.test.ts", status: "failed", message: "no such module", assertionResults: [] },
      { name: "/p/c.test.ts", status: "passed", assertionResults: [{ status: "passed", fullName: "is well" }] },
    ];
    expect(failedInVitest({ testResults: files }, "/p")).toEqual([
      "Failed: a.test.ts: adds up (not 3)",
      "Failed: b.test.ts (no such module)",
    ]);
    const spec = (title: string, status: string, message?: string) => ({
      title,
      file: "room.test.ts",
      tests: [{ status, results: [message === undefined ? {} : { error: { message } }] }],
    });
    const specs = [spec("opens", "expected"), spec("closes", "unexpected", "too late\n…"), spec("turns", "flaky", "not yet\n…")];
    expect(failedInPlaywright({ suites: [{ specs: [], suites: [{ specs }] }] })).toEqual([
      "Failed: room.test.ts: closes (too late)",
      "Passed when tried again: room.test.ts: turns (not yet)",
    ]);
    expect([failedInVitest(null, "/p"), failedInPlaywright(null)]).toEqual([[], []]);
  });

  it("is one plain line, with skips only where there are some", () => {
    expect(totalsLine(addTotals({ passed: 2, failed: 1, skipped: 0 }, { passed: 3, failed: 0, skipped: 0 }))).toBe("5 passed, 1 failed");
    expect(totalsLine({ ...NONE, passed: 4, skipped: 2 })).toBe("4 passed, 0 failed, 2 skipped");
  });
});
