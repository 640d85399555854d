import { describe, expect, it } from "vitest";
import { checkPlanted } from "./planted.ts";

const check = (files: Readonly<Record<string, string>>) => checkPlanted("check-shape.mjs", files);

// Put together here, so that this file does not hold what it looks for.
const [dot, cast] = [".", "as "];

const planted: readonly [what: string, file: string, text: string][] = [
  ["a test that is skipped", "src/files/table.test.ts", `it${dot}skip("reads", () => {});`],
  ["a test that is skipped", "test/house/all.test.ts", `describe${dot}only("all", () => {});`],
  [
    "an import inside the code",
    "src/engine/cloth/piece.ts",
    'export type P = import("../plan/index.ts").Plan;',
  ],
  ["unseeded chance", "src/engine/layout/seed.ts", `export const seed = Math${dot}random();`],
  ["round it differently", "src/engine/layout/heat.ts", `export const heat = Math${dot}exp(-1);`],
  ["round it differently", "src/engine/cloth/tone.ts", `export const tone = Math${dot}atan2(1, 2);`],
  ["a test that is skipped", "test/browser/all.browser.ts", `test${dot}skip("opens", () => {});`],
  ["a unit is made by length/ alone", "src/files/table.ts", `export const a = 3 ${cast}Length;`],
  ["words take types from files", "src/words/all.ts", 'import { readPlan } from "../files/index.ts";'],
  ["a cast that hides a type", "src/files/table.ts", `export const a = 3 ${cast}unknown ${cast}string;`],
  ["a type error that is hidden", "src/files/table.ts", `// @ts${"-"}ignore\nexport const a = 3;`],
  [
    "a lint exception without its reason",
    "src/files/table.ts",
    `// biome${"-"}ignore lint/a/b\nexport const a = 3;`,
  ],
];

describe("code shape", () => {
  it("passes plain code, whatever its comments say", () => {
    const text = `/* Math${dot}random */ export const a = "x"; // 3 ${cast}Length`;
    expect(check({ "src/engine/cloth/piece.ts": text })).toEqual({ status: 0, problems: [] });
  });

  it.each(planted)("finds %s in %s", (what, file, text) => {
    const { status, problems } = check({ [file]: text });
    expect(problems).toEqual([expect.stringContaining(`${file}:`)]);
    expect(problems[0]).toContain(what);
    expect(status).toBe(1);
  });

  it("fails where functions are too long to take in", () => {
    const long = (name: string) => `export function ${name}() {\n${"  a();\n".repeat(30)}}\n`;
    const { status, problems } = check({ "src/engine/plan/all.ts": `${long("one")}${long("two")}` });
    expect(problems).toHaveLength(2);
    expect(status).toBe(1);
  });

  it("fails where nothing was read", () => {
    expect(check({}).status).toBe(1);
  });
});
