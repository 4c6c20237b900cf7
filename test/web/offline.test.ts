import { describe, expect, test } from "vitest";
import { answerFrom } from "../../src/web/offline/whatToDo.ts";

describe("where an answer comes from when the server may be away", () => {
  test.each([
    ["GET", "/", true, "page"],
    ["GET", "/tickets/0193", true, "page"],
    ["GET", "/assets/App-B9NSl40Y.js", false, "file"],
    ["GET", "/api/tickets/0193", false, "read"],
    ["GET", "/api/balls/0193/last-time", false, "read"],
    // Streams, files and long work mean something only now.
    ["GET", "/api/queue/events", false, "network"],
    ["GET", "/api/photos/0193/bytes", false, "network"],
    ["GET", "/api/health", false, "network"],
    ["GET", "/api/export", false, "network"],
    ["GET", "/api/backups/one.zip", false, "network"],
    ["GET", "/api/plans/0193", false, "network"],
    ["POST", "/api/tickets", false, "network"],
    ["PATCH", "/api/bowlers/0193", false, "network"],
    ["DELETE", "/api/bowlers/0193/personal-data", false, "forget"],
    ["DELETE", "/api/shot-notes/0193", false, "network"],
    // Who is signed in is no memory; whoever leaves takes what was read along.
    ["GET", "/api/session", false, "network"],
    ["GET", "/api/sessions", false, "network"],
    ["GET", "/api/sign-ins", false, "network"],
    ["POST", "/api/session", false, "network"],
    ["DELETE", "/api/session", false, "forget"],
    ["POST", "/api/session/person", false, "forget"],
  ] as const)("%s %s", (method, path, isNavigation, from) => {
    expect(answerFrom(method, path, isNavigation)).toBe(from);
  });
});
