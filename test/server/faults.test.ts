import { expect, test } from "vitest";
import { RECORDS_FAULT_KINDS, RecordsFault } from "#contract/records/fault";
import { PROBLEM_KINDS } from "#contract/routes/problemKinds";
import { refusalOf } from "#server/http/faults";
import { refusalResponse } from "#server/http/refusal";

/** Statuses by RFC 9110 and RFC 6585; 507 by RFC 4918, which speaks of storage. */
const STATUS = {
  notFound: 404,
  changedMeanwhile: 412,
  refused: 422,
  keyReused: 422,
  busy: 503,
  readOnly: 507,
  full: 507,
  damaged: 500,
  unreadable: 500,
  newerSchema: 500,
  newerWriter: 507,
  frozen: 507,
  notReachable: 503,
  folderGone: 503,
  badBackup: 500,
} as const;

test.each(RECORDS_FAULT_KINDS)("what the records say, %s, has its status, and says nothing of paths or people", async (kind) => {
  const refusal = refusalOf(new RecordsFault(kind, "/srv/shop/Ottilie Sandgrouse", { current: { version: 2 } }));
  if (refusal === null) throw new Error("a fault of the records is no fault of ours");
  const response = refusalResponse(refusal);
  expect(response.status).toBe(STATUS[kind]);
  expect(response.headers.get("content-type")).toBe("application/problem+json");
  expect(await response.text()).not.toMatch(/srv|Sandgrouse/);
});

test("what passes by itself says when to try again", () => {
  const retry = (kind: "busy" | "full") => {
    const refusal = refusalOf(new RecordsFault(kind, "x"));
    return refusal === null ? "" : refusalResponse(refusal).headers.get("retry-after");
  };
  expect([retry("busy"), retry("full")]).toEqual(["2", null]);
});

test("a fault of ours is none that the asker could put right", () => {
  expect(refusalOf(new TypeError("x"))).toBeNull();
  for (const { status } of Object.values(PROBLEM_KINDS)) expect(status >= 400 && status < 600).toBe(true);
});
