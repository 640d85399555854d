import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { patchwork } from "../../../../test/generators/patchwork.ts";
import { type Contrast, colourDifference, contrasts, type Job, readColour } from "../../cloth/index.ts";
import { inches } from "../../length/index.ts";
import { checkLayout } from "../checker.ts";
import type { LayoutNode, LeafNode } from "../types.ts";
import { mapLeaves } from "../walk.ts";
import { boughFrom, layoutFrom, type Rect } from "./bough.ts";
import { eyeOf, isHalf, limitsOf } from "./eye.ts";
import { Known } from "./glance.ts";
import { coloursParted } from "./partColours.ts";
import { Viewer } from "./scene.ts";

const colours: Readonly<Record<string, string>> = {
  a: "#20304a",
  b: "#f2e8d0",
  c: "#b5523a",
  d: "#243350",
  e: "#7a8a4a",
};
const patches = Object.fromEntries(Object.entries(colours).map(([letter, colour]) => [letter, { colour }]));

type Work = { readonly job: Job; readonly layout: LayoutNode };

function sewn(rows: readonly string[], contrast: Contrast): Work {
  const { job, layout } = patchwork(rows, patches, { top: 2 });
  return { job: { ...job, contrast }, layout };
}

function parted({ job, layout }: Work, stays: readonly Rect[] = []): LayoutNode {
  const eye = eyeOf(layout, job);
  const viewer = new Viewer((node) => isHalf(node, eye));
  const spots = [{ x: 0, y: 0, width: layout.width, height: layout.height }];
  const known = new Known(boughFrom(layout, { spots, stays }, job), eye, viewer);
  const isSound = (root: typeof known.root) => known.glanceAt(root).faults(known.faults.length) !== null;
  return layoutFrom(coloursParted(known.scene, { eye, limits: limitsOf(eye), isSound }), job);
}

function leavesOf(layout: LayoutNode): LeafNode[] {
  const leaves: LeafNode[] = [];
  mapLeaves(layout, (leaf) => {
    leaves.push(leaf);
    return leaf;
  });
  return leaves;
}

/** Letters again, row by row: patchworks are rows of squares of one size. */
function lettersOf(layout: LayoutNode, wide: number): string[] {
  const letters = leavesOf(layout).map((leaf) =>
    leaf.kind === "piece" ? (Object.keys(colours)[Number(leaf.piece.split("-")[1]) - 1] ?? "?") : ".",
  );
  return Array.from({ length: letters.length / wide }, (_, row) =>
    letters.slice(row * wide, (row + 1) * wide).join(""),
  );
}

/** How many edges between neighbours `isBad` is said of. */
function edges(rows: readonly string[], isBad: (one: string, other: string) => boolean): number {
  let count = 0;
  for (const [y, row] of rows.entries())
    for (const [x, letter] of [...row].entries())
      for (const next of [row[x + 1], rows[y + 1]?.[x]])
        if (next !== undefined && isBad(letter, next)) count++;
  return count;
}

function labOf(letter: string) {
  const read = readColour(colours[letter] ?? "");
  if (read === null) throw new Error(`${letter} has a colour`);
  return read.lab;
}

const isLike = (contrast: Contrast) => (one: string, other: string) =>
  one === other || (contrast !== "blend" && colourDifference(labOf(one), labOf(other)) < 5);

function isWeak(one: string, other: string): boolean {
  const [a, b] = [labOf(one), labOf(other)];
  return Math.abs(a.l - b.l) < 10 && colourDifference(a, b) < 20;
}

describe("pieces change places so that like fabrics part", () => {
  it.each([
    ["two halves", ["aabb", "aabb"], "mixed"],
    ["two halves that should blend", ["aacc", "aacc"], "blend"],
    ["in stripes", ["aaaa", "bbbb", "cccc"], "strong"],
  ] as const)("%s: none touches its like any more", (_, rows, contrast) => {
    const wide = rows[0].length;
    expect(edges(rows, isLike(contrast))).toBeGreaterThan(0);
    expect(edges(lettersOf(parted(sewn(rows, contrast)), wide), isLike(contrast))).toBe(0);
  });

  it("two navies that nobody tells apart are parted, but where fabrics are to blend", () => {
    const rows = ["adbb", "adbb"];
    expect(edges(lettersOf(parted(sewn(rows, "mixed")), 4), isLike("mixed"))).toBe(0);
    expect(edges(lettersOf(parted(sewn(rows, "blend")), 4), isLike("blend"))).toBe(0);
  });

  it("leaves a layout alone in which nothing could be better", () => {
    const work = sewn(["ab", "ba"], "mixed");
    expect(parted(work)).toEqual(work.layout);
  });

  it("spreads a fabric that lies in one third alone", () => {
    const rows = ["acacbebebebe", "cacabebebebe", "acacbebebebe"].map((row) => row);
    const made = lettersOf(parted(sewn(rows, "mixed")), 12);
    const thirds = [0, 4, 8].map((from) => made.map((row) => row.slice(from, from + 4)).join(""));
    expect(thirds.filter((third) => third.includes("a")).length).toBeGreaterThan(1);
  });

  const grids = fc
    .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 5 }))
    .chain(([wide, high]) =>
      fc.array(
        fc
          .array(fc.constantFrom("a", "b", "c", "d", "e"), { minLength: wide, maxLength: wide })
          .map((row) => row.join("")),
        { minLength: high, maxLength: high },
      ),
    );

  it("never touches more of like, and never is weaker where she wants strong contrast", () => {
    const law = (rows: readonly string[], contrast: Contrast) => {
      const made = lettersOf(parted(sewn(rows, contrast)), rows[0]?.length ?? 0);
      expect(edges(made, isLike(contrast))).toBeLessThanOrEqual(edges(rows, isLike(contrast)));
      if (contrast === "strong") expect(edges(made, isWeak)).toBeLessThanOrEqual(edges(rows, isWeak));
    };
    fc.assert(fc.property(grids, fc.constantFrom(...contrasts), law), { numRuns: 60 });
  });

  it("uses the same pieces in the same cells, by the independent checker too", () => {
    const law = (rows: readonly string[], contrast: Contrast) => {
      const { job, layout } = sewn(rows, contrast);
      const made = parted({ job, layout });
      const used = (tree: LayoutNode) =>
        leavesOf(tree)
          .map((leaf) => (leaf.kind === "piece" ? leaf.piece : leaf.kind))
          .sort();
      expect(used(made)).toEqual(used(layout));
      const problems = (tree: LayoutNode) =>
        checkLayout({ ...job, layout: tree, buy: [] }).map(({ kind }) => kind);
      expect(problems(made)).toEqual(problems(layout));
    };
    fc.assert(fc.property(grids, fc.constantFrom(...contrasts), law), { numRuns: 40 });
  });

  it("never moves a cell that stays", () => {
    const law = (rows: readonly string[], x: number, y: number) => {
      const [wide, high] = [rows[0]?.length ?? 1, rows.length];
      const [column, row] = [x % wide, y % high];
      const side = inches(4);
      const stays = [{ x: column * side, y: row * side, width: side, height: side }];
      const made = lettersOf(parted(sewn(rows, "strong"), stays), wide);
      expect(made[row]?.[column]).toBe(rows[row]?.[column]);
    };
    fc.assert(fc.property(grids, fc.nat(10), fc.nat(10), law), { numRuns: 60 });
  });
});
