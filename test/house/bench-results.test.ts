import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { provedHeaps } from "../../bench/heaps.ts";
import { mostSewable } from "../../bench/mostSewable.ts";
import { readRaws } from "../../bench/raw.ts";
import { resultsText } from "../../bench/report/results.ts";
import { root } from "./planted.ts";

const raws = readRaws();

it("RESULTS.md is what the generator makes of the measurements, and nothing else", () => {
  const written = readFileSync(join(root, "bench", "RESULTS.md"), "utf8");
  expect(raws.length).toBeGreaterThan(0);
  expect(resultsText(raws.map(({ raw }) => raw)), "run `npm run bench:results`").toBe(written);
});

it.each(raws.map(({ name, raw }) => [name, raw] as const))("%s has a section of its own", (_, raw) => {
  expect(resultsText([raw])).toContain(raw.command);
});

// The bench holds the solver against this search, so it must find what was proved elsewhere (our own computation).
const quick = [
  "small-n8-s1-r1.3",
  "small-n8-s2-r1.3",
  "small-n8-s5-r1",
  "small-n8-s6-r1.3",
  "small-n10-s5-r1.3",
];

it.each(provedHeaps().filter(({ name }) => quick.includes(name)))(
  "the best of $name by looking at everything",
  ({ W, H, items, optimal }) => {
    expect(mostSewable({ width: W, height: H, items, smallest: 1 })).toBe(optimal);
  },
);

it("no strip of plain cloth may be narrower than the smallest", () => {
  const squares = {
    width: 20,
    height: 10,
    items: [
      { w: 10, h: 10, copies: 1 },
      { w: 9, h: 9, copies: 1 },
    ],
  };
  expect(mostSewable({ ...squares, smallest: 1 })).toBe(181);
  expect(mostSewable({ ...squares, smallest: 2 })).toBe(100);
});
