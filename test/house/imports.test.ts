import { describe, expect, it } from "vitest";
import { checkPlanted } from "./planted.ts";

const check = (files: Readonly<Record<string, string>>) => checkPlanted("check-imports.mjs", files);

const rooms = {
  "src/engine/length/index.ts": 'export * from "./types.ts";',
  "src/engine/length/types.ts": "export type Length = number;",
  "src/engine/cloth/index.ts": 'export type { Piece } from "./piece.ts";',
  "src/engine/cloth/piece.ts":
    'import type { Length } from "../length/index.ts"; export type Piece = Length;',
  "src/engine/layout/types.ts": "export type Node = number;",
};

/** A file that breaks a rule, and the rule it must be told of. */
const planted: readonly [rule: string, file: string, text: string][] = [
  [
    "engine-length-imports-only-rooms-to-its-left",
    "src/engine/length/size.ts",
    'import type { Piece } from "../cloth/index.ts"; export type Size = Piece;',
  ],
  [
    "engine-length-imports-only-rooms-to-its-left",
    "src/engine/length/again.ts",
    'export { type Piece } from "../cloth/index.ts";',
  ],
  [
    "between-engine-rooms-only-through-index",
    "src/engine/cloth/width.ts",
    'import type { Length } from "../length/types.ts"; export type Width = Length;',
  ],
  [
    "inside-a-room-never-through-its-own-index",
    "src/engine/cloth/pile.ts",
    'import type { Piece } from "./index.ts"; export type Pile = Piece;',
  ],
  [
    "the-checker-stands-alone",
    "src/engine/layout/checker.ts",
    'import { pinwheel } from "../units/index.ts"; export const size = pinwheel;',
  ],
  [
    "the-checker-stands-alone",
    "src/engine/layout/checker-units.ts",
    'import { grow } from "./grow.ts"; export const grown = grow;',
  ],
  [
    "engine-uses-only-its-packages",
    "src/engine/cloth/read.ts",
    'import { readFileSync } from "node:fs"; readFileSync("a");',
  ],
  [
    "engine-uses-only-its-packages",
    "src/engine/cloth/table.ts",
    'import Papa from "papaparse"; Papa.parse("a");',
  ],
  [
    "files-imports-only-engine",
    "src/files/all.ts",
    'import type { Text } from "../words/index.ts"; export type T = Text;',
  ],
  [
    "nobody-imports-the-command-line-or-the-app",
    "src/files/run.ts",
    'import { run } from "../cli/index.ts"; run();',
  ],
  [
    "into-the-engine-only-through-index",
    "src/files/length.ts",
    'import type { Length } from "../engine/length/types.ts"; export type T = Length;',
  ],
  [
    "what-runs-in-a-browser-has-no-node",
    "src/app/part.tsx",
    'import { readFileSync } from "node:fs"; export const Part = () => <p>{readFileSync("a")}</p>;',
  ],
  [
    "app-imports-only-engine-and-files-and-words-and-german-and-photo-and-booklet-and-store",
    "src/app/run.tsx",
    'import { run } from "../cli/index.ts"; export const Part = () => <p onClick={run}>a</p>;',
  ],
  [
    "every-room-has-a-rule",
    "src/engine/shed/all.ts",
    'import type { Length } from "../length/index.ts"; export type T = Length;',
  ],
  [
    "no-cycles",
    "src/engine/cloth/piece.ts",
    'import type { Side } from "./side.ts"; export type Piece = Side;',
  ],
  ["no-import-that-leads-nowhere", "src/engine/cloth/lost.ts", 'import { gone } from "./gone.ts"; gone();'],
];

const others = {
  "src/engine/cloth/side.ts": 'import type { Piece } from "./piece.ts"; export type Side = Piece;',
  "src/engine/units/index.ts": "export const pinwheel = 1;",
  "src/engine/layout/grow.ts": "export const grow = 1;",
  "src/files/index.ts": "export type Table = number;",
  "src/words/index.ts": 'import type { Table } from "../files/index.ts"; export type Text = Table;',
  "src/cli/index.ts": "export function run(): void {}",
};

function filesOf(all: typeof planted): Readonly<Record<string, string>> {
  const files = Object.fromEntries(all.map(([, file, text]) => [file, text]));
  if (Object.keys(files).length < all.length) throw new Error("each rule is broken in a file of its own");
  return files;
}

describe("import rules", () => {
  it("pass where no rule is broken", () => {
    expect(check({ ...rooms, ...others })).toEqual({ status: 0, problems: [] });
  });

  it("fail where one is broken, and name it alone", () => {
    const [[rule, file, text] = ["", "", ""]] = planted;
    const { status, problems } = check({ ...rooms, ...others, [file]: text });
    expect(problems).toEqual([expect.stringContaining(`${rule}: ${file} imports`)]);
    expect(status).toBe(1);
  });

  // Reading a folder takes long: all of them are broken in one, each in a file of its own.
  const broken = check({ ...rooms, ...others, ...filesOf(planted) });

  it.each(planted)("hold: %s in %s", (rule, file) => {
    expect(broken.problems.join("\n")).toContain(`${rule}: ${file} imports`);
    expect(broken.status).toBe(1);
  });

  it("fail where nothing was read", () => {
    expect(check({})).toEqual({ status: 1, problems: ["no sources found: nothing was checked"] });
  });
});
