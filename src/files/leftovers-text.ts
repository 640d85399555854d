import { err, ok, type Result } from "../engine/length/index.ts";
import type { FileProblem, OtherFile } from "./leftovers-problems.ts";

export const mostBytes = 5_000_000;

/**
 * The text of a table's bytes: UTF-8, UTF-16 where a byte order mark says so, else Windows-1252. Line ends become
 * line feeds. Refuses what is no text.
 */
export function textOf(bytes: Uint8Array): Result<string, FileProblem> {
  if (bytes.length > mostBytes) return err({ kind: "file-too-large", bytes: bytes.length, most: mostBytes });
  const other = otherFile(bytes);
  if (other !== null) return err({ kind: "not-a-table", looksLike: other });
  const text = decode(bytes).replace(/\r\n?/g, "\n");
  if (text.trim() === "") return err({ kind: "empty-file" });
  if (!looksWritten(text)) return err({ kind: "not-a-table", looksLike: "something-else" });
  return ok(text);
}

const firstBytes: readonly (readonly [OtherFile, readonly number[]])[] = [
  ["pdf", [0x25, 0x50, 0x44, 0x46]],
  ["picture", [0x89, 0x50, 0x4e, 0x47]],
  ["picture", [0xff, 0xd8, 0xff]],
  ["picture", [0x47, 0x49, 0x46, 0x38]],
  ["picture", [0x49, 0x49, 0x2a, 0x00]],
  ["picture", [0x4d, 0x4d, 0x00, 0x2a]],
  // Workbooks from before 2007.
  ["spreadsheet", [0xd0, 0xcf, 0x11, 0xe0]],
  ["zip", [0x50, 0x4b, 0x03, 0x04]],
  ["zip", [0x50, 0x4b, 0x05, 0x06]],
  ["something-else", [0x1f, 0x8b]],
];

function otherFile(bytes: Uint8Array): OtherFile | null {
  const found = firstBytes.find(([, first]) => first.every((byte, index) => bytes[index] === byte));
  if (found?.[0] === "zip") return holdsWorkbook(bytes) ? "spreadsheet" : "zip";
  if (found !== undefined) return found[0];
  const brand = latin(bytes.subarray(4, 8));
  if (brand === "ftyp" || latin(bytes.subarray(8, 12)) === "WEBP") return "picture";
  return null;
}

// A workbook is a zip too; the names of its parts stand uncompressed at the start and again at the end.
function holdsWorkbook(bytes: Uint8Array): boolean {
  const names = latin(bytes.subarray(0, 4000)) + latin(bytes.subarray(-20_000));
  return /xl\/|opendocument\.spreadsheet|Index\/(Document|Tables)/.test(names);
}

function latin(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
}

function decode(bytes: Uint8Array): string {
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  const text = new TextDecoder("utf-8").decode(bytes);
  if (isUtf8(bytes)) return text;
  const marked = first === 0xef && second === 0xbb && third === 0xbf;
  return marked || isDamagedUtf8(text) ? text : windows1252(bytes);
}

// A letter lost long ago may stand in good UTF-8 as U+FFFD, so the text alone does not tell.
function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

// One spoilt byte must not turn every other umlaut of a UTF-8 table into two wrong letters. In Windows-1252 nearly
// every letter beyond ASCII is unreadable as UTF-8, so the majority tells.
function isDamagedUtf8(text: string): boolean {
  const unreadable = text.split("\ufffd").length - 1;
  const beyondAscii = [...text].filter((letter) => letter > "\u007f" && letter !== "\ufffd").length;
  return beyondAscii > unreadable;
}

// 0x80 to 0x9F by hand: several releases of a common runtime decode them as ISO 8859-1, and prices, dashes and quotes
// are there. Source: WHATWG Encoding Standard, index windows-1252; its five gaps are unreadable here.
const from80to9f =
  "\u20ac\ufffd\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\ufffd\u017d\ufffd" +
  "\ufffd\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\ufffd\u017e\u0178";

function windows1252(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => from80to9f[byte - 0x80] ?? String.fromCharCode(byte)).join("");
}

/** Text has hardly any control characters, and a table does not begin like a program's own file. */
function looksWritten(text: string): boolean {
  if (text.includes("\0") || /^\s*[<{[]/.test(text)) return false;
  const controls = [...text].filter((letter) => isStrange(letter) && letter !== "\ufffd").length;
  return controls * 100 <= text.length;
}

/** A control character, or what a decoder puts where it could not read. */
export function isStrange(letter: string): boolean {
  const code = letter.codePointAt(0) ?? 0;
  if (letter === "\t" || letter === "\n") return false;
  return code < 0x20 || (code >= 0x7f && code < 0xa0) || code === 0xfffd;
}
