import { useMemo, useState } from "react";
import type { FinishPlan } from "#engine/planning/plan";

export interface FinishChoice {
  readonly shown: readonly string[];
  readonly compared: readonly string[];
  onShow(finish: string, on: boolean): void;
  onCompare(finish: string, on: boolean): void;
}

/** Which finishes are on the chart and which stand side by side: until someone chooses, the pick, and the two ends of the range with it. */
export function useChoice(plan: FinishPlan | null, mostCompared: number): FinishChoice {
  const [shown, setShown] = useState<readonly string[] | null>(null);
  const [compared, setCompared] = useState<readonly string[] | null>(null);
  return useMemo(() => {
    const withLine = plan?.candidates.filter((c) => c.line !== null).map((c) => c.finish) ?? [];
    const pick = plan?.pick?.finish;
    const there = (list: readonly string[]): string[] => withLine.filter((finish) => list.includes(finish));
    const usualShown = pick === undefined ? withLine : [pick];
    const usualCompared = there([withLine[0], pick, withLine.at(-1)].filter((f) => f !== undefined)).slice(0, mostCompared);
    const nowShown = shown === null ? usualShown : there(shown);
    const nowCompared = compared === null ? usualCompared : there(compared).slice(0, mostCompared);
    const changed = (list: readonly string[], finish: string, on: boolean): string[] =>
      on ? [...list, finish] : list.filter((f) => f !== finish);
    return {
      shown: nowShown,
      compared: nowCompared,
      onShow: (finish: string, on: boolean) => setShown(changed(nowShown, finish, on)),
      onCompare: (finish: string, on: boolean) => setCompared(changed(nowCompared, finish, on)),
    };
  }, [plan, shown, compared, mostCompared]);
}
