import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import { csvRows, csvText } from "#contract/csv";
import type { RecordsFault } from "#contract/records/fault";
import { testPostgres } from "./postgres.ts";
import { onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

const postgres = await testPostgres();
afterAll(() => postgres?.stop());
const ENGINES: readonly (readonly [string, () => Promise<TestShop>])[] = [
  ["SQLite", () => testShop()],
  ...(postgres === null ? [] : ([["PostgreSQL", async () => testShop({ postgres: await postgres.newDatabase() })]] as const)),
];

describe("a table as text", () => {
  // The examples of RFC 4180, section 2.
  it.each([
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
    [
      "\uFEFFname;phone\r\nA;\r\n\r\n",
      [
        ["name", "phone"],
        ["A", ""],
      ],
    ],
    [
      "a\tb\n1\t2",
      [
        ["a", "b"],
        ["1", "2"],
      ],
    ],
  ])("reads %j", (text, rows) => {
    expect(csvRows(text)).toEqual(rows);
  });

  // Beginnings of a formula: OWASP, "CSV Injection"; the full-width signs are from there too.
  const FORMULAS = ["=1+1", "+49 555", "-lead", "@sum(A1)", "\t=1", "\r=1", "\n=1", "＝1+1", "＋1", "－1", "＠sum"];
  const AWKWARD = [
    ...FORMULAS,
    ...FORMULAS.flatMap((formula) => [
      ` ${formula}`,
      `oil;${formula}`,
      `a\tb\t${formula}`,
      `first\n${formula}`,
      `'${formula}`,
      `''${formula}`,
      `x;"${formula}`,
      `x;"${formula};y`,
      `x\t"'${formula}`,
    ]),
    "plain",
    'with "quotes", commas',
    "two\r\nlines",
    "",
    "'tis",
    ";",
    "O'Hara",
  ];

  it("reads what it writes to the letter", () => {
    const columns = AWKWARD.map((_, i) => `c${i}`);
    expect(csvRows(csvText(columns, [AWKWARD]))).toEqual([columns, AWKWARD]);
  });

  it.each([",", ";", "\t"])("holds no cell that begins like a formula, read with %j between the cells", (separator) => {
    for (const text of AWKWARD) {
      const written = csvText(["a", "b", "c"], [["x", text, "y"]]);
      for (const cell of written.slice("a,b,c\r\n".length).split(new RegExp(`[${separator}\r\n]`)))
        expect(cell.replace(/^["\s]+/, "")).not.toMatch(/^[=+\-@＝＋－＠]/);
    }
  });

  it("leaves numbers as they are: they may be below nothing", () => {
    expect(csvText(["n"], [[-2.5]])).toBe("n\r\n-2.5\r\n");
  });
});

const BOWLERS = "Customer;Telephone;Bowling hand;Shoe size\r\nHedda Plover;0555 0110;Right;40\r\nJoost Dunlin;0555 0111;left;43\r\n";

describe.each(ENGINES)("on %s", (_, open) => {
  let shop: TestShop;
  beforeEach(async () => {
    shop = await open();
  });
  afterEach(() => shop.end());

  it("an export holds everything, as JSON and as tables", async () => {
    const { records, by } = shop;
    const { bowler, ball } = await onTheCounter(shop);
    await records.bowlers.create({ name: "=cmd()", notes: "a,b" }, { by });
    const files = new Map((await records.lists.exportAll()).map(({ name, text }) => [name, text]));
    const whole = JSON.parse(files.get("everything.json") ?? "");
    expect(whole.bowlers[0]).toMatchObject({ id: bowler.id, name: bowler.name });
    expect(whole.balls).toMatchObject([{ id: ball.id, serial: ball.serial }]);
    expect(files.get("bowlers.csv")).toContain("'=cmd()");
    expect(csvRows(files.get("balls.csv") ?? "")).toHaveLength(2);
  });

  describe("an import", () => {
    it("shows first what it would do, and writes nothing", async () => {
      const { records } = shop;
      const preview = await records.lists.preview("bowlers", BOWLERS);
      expect(preview).toMatchObject({
        columns: ["Customer", "Telephone", "Bowling hand", "Shoe size"],
        mapping: { Customer: "name", Telephone: "phone", "Bowling hand": "hand" },
        rows: 2,
        alreadyThere: 0,
        problems: [],
      });
      expect(preview.sample[0]).toMatchObject({ name: "Hedda Plover", hand: "right" });
      expect((await records.bowlers.list()).items).toEqual([]);
    });

    it("adds what is new, passes over what is there, and can be undone", async () => {
      const { records, by } = shop;
      const first = await records.lists.apply("bowlers", BOWLERS, undefined, { by });
      expect(first).toMatchObject({ added: 2, alreadyThere: 0 });
      expect(await records.lists.apply("bowlers", BOWLERS, undefined, { by })).toMatchObject({ added: 0, alreadyThere: 2 });
      expect((await records.search.find("dunlin")).bowlers).toMatchObject([{ hand: "left" }]);
      const balls = await records.lists.apply("balls", "name,serial,owner,cover,weight\nWigeon,A1,Hedda Plover,Solid,15\n", undefined, {
        by,
      });
      expect((await records.search.find("wigeon")).balls).toMatchObject([{ cover: "solid", core: { massLb: 15 } }]);
      // A bowler who has a ball now stays, and with her the whole import.
      expect((await refusal<RecordsFault>(records.lists.undo(first.importId, { by }))).kind).toBe("refused");
      expect(await records.lists.undo(balls.importId, { by })).toBe(1);
      expect(await records.lists.undo(first.importId, { by })).toBe(2);
      expect((await records.bowlers.list()).items).toEqual([]);
    });

    it("tells every row that cannot be read, with its line, and adds none", async () => {
      const { records, by } = shop;
      const csv = "name,cover,weight,owner\nSmew,rubber,15,\nTeal,solid,heavy,\nGadwall,pearl,14,Nobody Known\nPochard,hybrid,12,\n";
      const { problems } = await records.lists.preview("balls", csv);
      expect(problems.map(({ row, column, value }) => [row, column, value])).toEqual([
        [2, "cover", "rubber"],
        [3, "weight", "heavy"],
        [4, "owner", "Nobody Known"],
      ]);
      const fault = await refusal<RecordsFault>(records.lists.apply("balls", csv, undefined, { by }));
      expect(fault.problems.map(({ path }) => path)).toEqual(["rows.2.cover", "rows.3.weight", "rows.4.owner"]);
      expect((await records.balls.list()).items).toEqual([]);
    });

    it("takes the mapping it is given, and refuses one that leads nowhere", async () => {
      const { records } = shop;
      const csv = "a,b\nSmew,solid\n";
      expect((await records.lists.preview("balls", csv, { a: "name", b: "cover" })).problems).toEqual([]);
      for (const mapping of [{ c: "name" }, { a: "owner of the moon" }, { a: "name", b: "name" }])
        expect((await refusal<RecordsFault>(records.lists.preview("balls", csv, mapping as unknown as Record<string, string>))).kind).toBe(
          "refused",
        );
    });
  });
});
