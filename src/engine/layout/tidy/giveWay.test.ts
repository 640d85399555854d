import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { heaps, jobOf } from "../../../../test/plans/heaps.ts";
import { compose, styles } from "../../back/index.ts";
import { inches } from "../../length/index.ts";
import { fillRegions } from "../fillRegions.ts";
import { type Bough, boughFrom, type Leaf, partAt, type Way } from "./bough.ts";
import { eyeOf, isHalf, limitsOf } from "./eye.ts";
import type { Fault } from "./fault.ts";
import { givingWay } from "./giveWay.ts";
import type { Mending } from "./moves.ts";
import { boundsOf } from "./resize.ts";

const laid = styles.map((style, at) => {
  const job = jobOf(heaps[at % heaps.length] ?? "", "weekend");
  const search = fillRegions(compose(job, style, 0), job, { style, seed: 1, effort: 60 });
  search.step(60);
  const layout = search.layout();
  const eye = eyeOf(layout, job);
  const spots = [{ x: 0, y: 0, width: layout.width, height: layout.height }];
  const root = boughFrom(layout, { spots, stays: [] }, job);
  const limits = limitsOf(eye);
  const mending: Mending = {
    root,
    begun: new Set(),
    cloths: [job.plain],
    isHalf: (leaf: Leaf) => isHalf(leaf.node, eye),
    limits,
  };
  return { mending, forks: forksIn(root, []) };
});

function forksIn(bough: Bough, way: Way): Way[] {
  if (bough.kind === "leaf") return [];
  return [way, ...bough.parts.flatMap((part, at) => forksIn(part, [...way, at]))];
}

function leavesOf(bough: Bough): Leaf[] {
  return bough.kind === "leaf" ? [bough] : bough.parts.flatMap(leavesOf);
}

function pieceCounts(bough: Bough): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { node } of leavesOf(bough))
    if (node.kind === "piece") counts.set(node.piece, (counts.get(node.piece) ?? 0) + 1);
  return counts;
}

/** A long seam that lies `by` off where it may, between any two parts. */
const seams = fc.record({
  at: fc.constantFrom(...laid),
  fork: fc.nat(),
  index: fc.nat(),
  by: fc.integer({ min: 1, max: 24 }),
});

describe("a long seam that moves though what lies beside it can't", () => {
  it("moves in a layout that is as large, of pieces as large as they may be, none twice", () => {
    let moved = 0;
    const law = ({
      at: { mending, forks },
      fork: which,
      index,
      by,
    }: typeof seams extends fc.Arbitrary<infer S> ? S : never) => {
      const { root, limits } = mending;
      const way = forks[which % forks.length] ?? [];
      const fork = partAt(root, way);
      if (fork?.kind !== "fork") return;
      const eighths = by * inches(1, 8);
      const fault: Fault = {
        kind: "long seam",
        ways: [[...way, index % (fork.parts.length - 1)]],
        by: [eighths, eighths + inches(3)],
        wide: fork.beside,
      };
      const before = pieceCounts(root);
      const sizes = new Map(leavesOf(root).map(({ node, width, height }) => [node, `${width} ${height}`]));
      for (const other of givingWay(fault, mending)) {
        moved++;
        expect([other.width, other.height]).toEqual([root.width, root.height]);
        for (const [piece, count] of pieceCounts(other))
          expect(count, piece).toBeLessThanOrEqual(before.get(piece) ?? 0);
        for (const { node, width, height } of leavesOf(other)) {
          if (node.kind !== "piece" || sizes.get(node) === `${width} ${height}`) continue;
          for (const [wide, side] of [
            [true, width],
            [false, height],
          ] as const) {
            const bounds = boundsOf(node, wide, limits);
            expect(side, node.piece).toBeLessThanOrEqual(bounds?.max ?? side);
          }
        }
      }
    };
    fc.assert(fc.property(seams, law), { numRuns: 200 });
    expect(moved).toBeGreaterThan(200);
  });
});
