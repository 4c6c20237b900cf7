import type { House } from "#contract/records/place";
import { TAUGHT } from "#words/en/rooms/taught";
import { type Json, valueAt } from "../../jobFile/jobDraft.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { useHouses } from "../../shop/usePlaces.ts";
import { useForm } from "./formContext.ts";

const NOTHING = "";
const AS_IN_FILE = "file";

/** Whether the plan takes what the shots seen in a house have taught, in place of the usual ranges. Not shown where no house has taught anything. */
export function TaughtEntry() {
  const { draft } = useForm();
  const houses = useHouses();
  const taught = (houses.data?.items ?? []).flatMap(({ id, name, taught: kept }) => (kept === null ? [] : [{ id, name, kept }]));
  const now = valueAt(draft.job, "house");
  if (taught.length === 0 && now === undefined) return null;
  const isSame = (house: NonNullable<House["taught"]>["house"]) => JSON.stringify(house) === JSON.stringify(now);
  const value = now === undefined ? NOTHING : (taught.find(({ kept }) => isSame(kept.house))?.id ?? AS_IN_FILE);
  const words = {
    [NOTHING]: TAUGHT.notInPlan,
    ...Object.fromEntries(taught.map(({ id, name, kept }) => [id, TAUGHT.inPlanOf(name, kept.house.shots)])),
    ...(value === AS_IN_FILE ? { [AS_IN_FILE]: TAUGHT.fromFile(Number(valueAt(now, "shots") ?? 0)) } : {}),
  };
  const take = (id: string) => {
    if (id === AS_IN_FILE) return;
    draft.set("house", taught.find((house) => house.id === id)?.kept.house as Json | undefined);
  };
  return <WordField label={TAUGHT.inPlan} value={value} words={words} onChange={take} />;
}
