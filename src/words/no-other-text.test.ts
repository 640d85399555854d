import { readdirSync, readFileSync } from "node:fs";
import { parseSync } from "@swc/core";
import { describe, expect, test } from "vitest";

/** Rooms whose code says nothing itself: what she reads comes from the catalogue. */
const rooms = ["engine", "files", "cli", "booklet"];

/** Words she may type, not words she reads. */
const wordsToRead = ["engine/length/dates.ts", "engine/length/units.ts", "files/line-words.ts"];

type Node = { readonly type?: string; readonly [part: string]: unknown };

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;

/** Texts in `node`, save what our own failures say (`assert`, `throw`) and types. */
function textsIn(node: unknown): string[] {
  if (!isNode(node)) return [];
  if (node.type === "ThrowStatement" || node.type === "ImportDeclaration") return [];
  if (typeof node.type === "string" && node.type.startsWith("Ts") && node.type.includes("Type")) return [];
  if (node.type === "CallExpression" && isNode(node.callee) && node.callee.value === "assert") return [];
  if (node.type === "StringLiteral") return [String(node.value)];
  if (node.type === "TemplateLiteral" && Array.isArray(node.quasis)) {
    const written = node.quasis.map((quasi) => (isNode(quasi) ? String(quasi.raw) : "")).join("…");
    return [written, ...textsIn(node.expressions)];
  }
  return Object.values(node).flatMap(textsIn);
}

const isSentence = (text: string) =>
  // A list of fonts is for the browser.
  !text.endsWith(", sans-serif") &&
  /(?:^|[^\p{L}])\p{L}+['’]?\p{L}*,? \p{L}+['’]?\p{L}*,? \p{L}+/u.test(text);

const sentencesIn = (source: string) =>
  textsIn(parseSync(source, { syntax: "typescript", target: "es2022" }).body).filter(isSentence);

describe("the scan itself", () => {
  test.each([
    ['const a = "there is no such file";', 1],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: source text for the scan
    ["const a = `${file} can't be written`; say(a);", 1],
    ['assert(a > 0, "shares must add up"); throw new Error("it must not happen");', 0],
    ['type A = "one of three words"; const kind = "half-square-triangle";', 0],
    ['import x from "a b c"; // there is no such file', 0],
  ])("%s", (source, count) => {
    expect(sentencesIn(source)).toHaveLength(count);
  });
});

describe("no sentence stands outside the catalogue", () => {
  const src = new URL("../", import.meta.url);
  const files = rooms.flatMap((room) =>
    readdirSync(new URL(room, src), { recursive: true, encoding: "utf8" })
      .map((file) => `${room}/${file}`)
      .filter((file) => file.endsWith(".ts") && !/\.(test|typetest)\.ts$/.test(file)),
  );

  test("there are files to look at", () => {
    expect(files.length).toBeGreaterThan(60);
  });

  test.each(rooms)("%s", (room) => {
    const found = files
      .filter((file) => file.startsWith(`${room}/`) && !wordsToRead.includes(file))
      .flatMap((file) =>
        sentencesIn(readFileSync(new URL(file, src), "utf8")).map((text) => `${file}: ${text}`),
      );
    expect(found).toEqual([]);
  });
});
