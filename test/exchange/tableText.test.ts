import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { JobFault } from "#contract/problem";
import { tableText } from "#exchange/tableText";

const TABLE = "Name;Telephone\r\nZoë Ångström;+1 555 0100\r\n";

function utf16(text: string, isLittle: boolean): Buffer {
  const little = Buffer.from(text, "utf16le");
  return isLittle ? little : little.swap16();
}

const LITTLE_MARK = Buffer.from([0xff, 0xfe]);
const BIG_MARK = Buffer.from([0xfe, 0xff]);

function refused(bytes: Uint8Array): string {
  try {
    return tableText(bytes);
  } catch (fault) {
    if (fault instanceof JobFault) return fault.problems[0].reason.id;
    throw fault;
  }
}

describe("a table's bytes", () => {
  it.each([
    ["UTF-8", Buffer.from(TABLE)],
    ["UTF-8 with its mark", Buffer.from(`\ufeff${TABLE}`)],
    ["UTF-16, little end first", Buffer.concat([LITTLE_MARK, utf16(TABLE, true)])],
    ["UTF-16, big end first", Buffer.concat([BIG_MARK, utf16(TABLE, false)])],
    ["UTF-16 without its mark, little end first", utf16(TABLE, true)],
    ["UTF-16 without its mark, big end first", utf16(TABLE, false)],
    ["windows-1252", Buffer.from(TABLE, "latin1")],
  ])("in %s are read as what was written", (_, bytes) => {
    expect(tableText(bytes)).toBe(TABLE);
  });

  it("in windows-1252 have its own signs where latin1 has none", () => {
    // Code page 1252: 80 is €, 92 is ’ (WHATWG Encoding, index-windows-1252).
    expect(tableText(Uint8Array.of(0x80, 0x3b, 0x92))).toBe("€;’");
  });

  it.each([
    ["a workbook", zipSync({ "xl/workbook.xml": new Uint8Array(9) }), "workbook"],
    ["a workbook of the older kind", Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0), "workbook"],
    ["a picture", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13), "notTable"],
    ["bytes that windows-1252 has no sign for", Buffer.from("Name\r\nA\x81\x8d\r\n", "latin1"), "notTable"],
    ["UTF-8 with one byte that is none", Buffer.concat([Buffer.from(TABLE), Buffer.from([0xe9, 0x0a])]), "notTable"],
    ["UTF-8 that was cut in the middle of a letter", Buffer.from("Name\r\nZoë Ång").subarray(0, -3), "notTable"],
    ["UTF-16 that breaks off", Buffer.concat([LITTLE_MARK, utf16(TABLE, true).subarray(0, 9)]), "notTable"],
    ["UTF-16 with half a sign", Buffer.concat([LITTLE_MARK, utf16("a\ud800b", true)]), "notTable"],
    ["nothing", new Uint8Array(), "emptyTable"],
    ["blanks", Buffer.from("\ufeff \r\n"), "emptyTable"],
  ])("that are %s are refused", (_, bytes, id) => {
    expect(refused(bytes)).toBe(id);
  });
});
