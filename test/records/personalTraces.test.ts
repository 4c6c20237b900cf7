import { expect, it } from "vitest";
import { withoutWhole } from "#records/personal/traces";
import { testShop } from "./shop.ts";

const NAME = "Gunnar Pfeffersack";
const PHONE = "0611 123777";

it.each([
  "friend of Gunnar Pfeffersack",
  "friend of gunnar  pfeffersack",
  "friend of Gunnar\nPfeffersack",
  "friend of Pfeffersack, Gunnar",
  "tel 0611123777",
  "tel 0611-123777",
  "tel (0611) 123 777",
  "tel 0611/12.37.77",
])("a whole name or number goes however it is written: %j", (text) => {
  expect(withoutWhole(text, [NAME, PHONE])).toMatch(/^(friend of|tel \(?) ?\(erased\)$/);
});

it("what only has words or digits of it stays", () => {
  for (const text of ["Gunnar told us", "0611 99", "1.06 kg, 1112377"]) expect(withoutWhole(text, [NAME, PHONE])).toBe(text);
});

it("a mention in another bowler's notes shields nobody; another bowler who has the same name does", async () => {
  const shop = await testShop();
  const { records, by } = shop;
  const gone = await records.bowlers.create({ name: NAME, phone: PHONE }, { by });
  await records.bowlers.create({ name: "Ana Plover", notes: `friend of ${NAME}, tel ${PHONE}` }, { by });
  const house = await records.houses.create({ name: "Reed Bank", notes: `${NAME}, 0611/123777` }, { by });
  const twin = await records.bowlers.create({ name: "Hedda Wren" }, { by });
  const other = await records.bowlers.create({ name: "Hedda Wren" }, { by });
  const note = await records.houses.create({ name: "Mud Flat", notes: "Hedda Wren" }, { by });
  await records.personal.erase(gone.id, { by });
  await records.personal.erase(twin.id, { by });
  expect((await records.houses.get(house.id)).notes).toBe("(erased), (erased)");
  expect((await records.houses.get(note.id)).notes).toBe("Hedda Wren");
  expect((await records.bowlers.get(other.id)).name).toBe("Hedda Wren");
  await shop.end();
});
