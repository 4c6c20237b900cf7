import { describe, expect, it } from "vitest";
import { judge } from "./fact.ts";
import { FACTS } from "./facts.ts";

describe.each([...new Set(FACTS.map((fact) => fact.topic))])("%s", (topic) => {
  it.each(FACTS.filter((fact) => fact.topic === topic).map((fact) => [`${fact.says} (${fact.source}; ${fact.provenance})`, fact] as const))(
    "%s",
    (_name, fact) => {
      const { predicted, error, holds } = judge(fact);
      expect(holds, `predicted ${predicted} ${fact.unit}, known ${String(fact.known)}, off by ${error}`).toBe(true);
    },
  );
});
