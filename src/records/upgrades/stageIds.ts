import type { Fields } from "../things/definition.ts";

/** Version 3 of tickets: each planned stage has an id, those of before by their place in the plan that they are in. */
export function stageIds(body: Fields): Fields {
  const stages = Array.isArray(body.stages) ? body.stages : [];
  return { ...body, stages: stages.map((stage, i) => ({ ...(stage as Fields), id: `0-${i}` })) };
}
