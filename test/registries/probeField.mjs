// Runs in the copy, on what was built there: keeps a bowler with the planted field in a shop, and prints what the program does with it.

import { randomBytes } from "node:crypto";
import { API } from "#contract/routes/api";
import { openApi } from "#contract/routes/openApi";
import { hasherHere } from "#records/accounts/hasher";
import { openRecords } from "#records/openRecords";

const [folder, field, number, csv, newer] = process.argv.slice(2);
const hasher = hasherHere({ memoryKib: 64, passes: 1 }, randomBytes);
const records = await openRecords({ folder, now: Date.now, randomBytes, hasher, programVersion: "0.0.0-test" });
const { items } = await records.people.list({});
const by = items[0].id;
const namesFound = async (words) => (await records.search.find(words)).bowlers.map(({ name }) => name);

const older = (await records.bowlers.list({})).items.map((bowler) => bowler[field]);
const { id, version } = await records.bowlers.create({ name: "Ana Plover", [field]: number }, { by });
const { id: houseId } = await records.houses.create({ name: "Reed Bank", notes: `ask ${newer} for the lanes` }, { by });
const found = [await namesFound(number), await namesFound(number.slice(-4))];
await records.bowlers.change(id, { [field]: newer }, { by, expectedVersion: version });
const foundAfter = [await namesFound(number), await namesFound(newer)];

const preview = await records.lists.preview("bowlers", csv);
await records.lists.apply("bowlers", csv, undefined, { by });
const files = await records.lists.exportAll();
const table = files.find(({ name }) => name === "bowlers.csv").text;
const personal = JSON.parse(JSON.stringify(await records.personal.exportOf(id, { by })));

await records.personal.erase(id, { by });
const left = (await records.lists.exportAll()).map(({ text }) => text).join("");
const erased = {
  own: (await records.bowlers.get(id))[field],
  elsewhere: (await records.houses.get(houseId)).notes,
  found: await namesFound(newer),
  leftAnywhere: left.includes(newer),
};
const { paths, components } = openApi(API, "0.0.0");
const written = paths["/api/bowlers"].post.requestBody.content["application/json"].schema.properties[field];
const given = paths["/api/bowlers/{id}"].get.responses[200].content["application/json"].schema;
const read = components.schemas.Bowler.properties[field];
const roles = [paths["/api/bowlers/{id}"].get.security, paths["/api/bowlers/{id}"].patch.security];
await records.close();
process.stdout.write(
  JSON.stringify({
    older,
    found,
    foundAfter,
    preview,
    table,
    personal: JSON.stringify(personal),
    erased,
    openApi: { written, read, given, roles },
  }),
);
