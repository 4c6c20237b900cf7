import { wholeFileFault } from "#contract/problem";

/** The largest table that is read: twenty thousand rows of a thousand letters. */
export const MOST_TABLE_BYTES = 20_000_000;
/** How far is looked for the zeros that tell UTF-16 without its mark, bytes. */
const LOOKED_AT = 4096;
/** Beginnings of workbooks: a ZIP archive (APPNOTE 4.3.7), a compound file ([MS-CFB] 2.2). */
const WORKBOOKS = [
  [0x50, 0x4b, 0x03, 0x04],
  [0xd0, 0xcf, 0x11, 0xe0],
];
/** No table has these: control characters other than tab and line ends, and what windows-1252 leaves without a sign. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const NO_TEXT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/;

/**
 * The text of a table as other programs save it: UTF-8, UTF-16 with or without its mark, or windows-1252, which older spreadsheets write.
 *
 * @throws {JobFault} `workbook` for a spreadsheet's own file, `notTable` for what none of these encodings gives, `emptyTable`
 */
export function tableText(bytes: Uint8Array): string {
  if (WORKBOOKS.some((begin) => begin.every((byte, i) => bytes[i] === byte)))
    throw wholeFileFault("unreadable", "workbook", "a table as CSV");
  const text = decoded(bytes);
  if (text === null || NO_TEXT.test(text)) throw wholeFileFault("unreadable", "notTable", "a table as text: UTF-8, UTF-16 or windows-1252");
  if (text.trim() === "") throw wholeFileFault("unreadable", "emptyTable", "a heading and at least one row");
  return text;
}

function decoded(bytes: Uint8Array): string | null {
  const utf16 = utf16Of(bytes);
  if (utf16 !== null) return strictly(utf16, bytes);
  return strictly("utf-8", bytes) ?? (isDamagedUtf8(bytes) ? null : windows1252(bytes));
}

/** Letters of several bytes that are right as UTF-8 hardly ever come about by chance: with as many of them as wrong ones it is UTF-8 that was cut or damaged. */
function isDamagedUtf8(bytes: Uint8Array): boolean {
  const text = new TextDecoder("utf-8").decode(bytes);
  const wrong = text.match(/\ufffd/g)?.length ?? 0;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: everything beyond ASCII
  const right = (text.match(/[^\u0000-\u007f]/gu)?.length ?? 0) - wrong;
  return right > 0 && right >= wrong;
}

/** Code page 1252 differs from Latin 1 in these (WHATWG Encoding, index-windows-1252); the gaps stay what they are, control characters. Node 20 reads it as Latin 1. */
const FROM_80 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

function windows1252(bytes: Uint8Array): string {
  return new TextDecoder("latin1").decode(bytes).replace(/[\u0080-\u009f]/g, (sign) => FROM_80[sign.charCodeAt(0) - 0x80]);
}

/** By its mark; without one, by the zeros that are every other byte of what is mostly Latin. */
function utf16Of(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  const pairs = Math.floor(Math.min(bytes.length, LOOKED_AT) / 2);
  const zeros = [0, 0];
  for (let i = 0; i < 2 * pairs; i += 1) if (bytes[i] === 0) zeros[i % 2] += 1;
  if (zeros[1] > pairs / 2 && zeros[0] === 0) return "utf-16le";
  return zeros[0] > pairs / 2 && zeros[1] === 0 ? "utf-16be" : null;
}

function strictly(encoding: string, bytes: Uint8Array): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch (fault) {
    if (fault instanceof TypeError) return null;
    throw fault;
  }
}
