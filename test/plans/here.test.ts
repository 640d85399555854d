import { describe, expect, it } from "vitest";
import { choicesFor, leavesOf, nodeAt, withPieceAt } from "../../src/engine/layout/index.ts";
import { makePlan } from "../../src/engine/plan/index.ts";
import { heaps, jobOf } from "./heaps.ts";
import { lawsBrokenBy } from "./laws.ts";

const effort = 40;

describe.each(heaps.slice(0, 3))("another piece of %s in one place", (heap) => {
  const job = jobOf(heap, "weekend");
  const request = { style: "strippy", seed: 1, effort } as const;
  const plan = makePlan(job, request);
  const cells = leavesOf(plan.layout, job).flatMap((cell) =>
    choicesFor(cell, plan.layout, job).map((choice) => ({ ...cell, choice })),
  );

  it("is one that is there, as large as the place, and not the one that lies there", () => {
    expect(cells.length).toBeGreaterThan(0);
    for (const { node, choice } of cells) {
      expect([choice.width, choice.height]).toEqual([node.width, node.height]);
      expect(node.kind === "piece" ? node.piece : "").not.toBe(choice.piece);
      expect(job.pieces.map(({ id }) => id)).toContain(choice.piece);
    }
  });

  it("lies there in the next plan, which keeps every law", () => {
    const some = cells.filter((_, index) => index % Math.ceil(cells.length / 2) === 0);
    for (const { path, x, y, choice } of some) {
      const stays = withPieceAt(plan.layout, path, choice);
      expect(nodeAt(stays.layout, path)).toEqual(choice);
      const next = makePlan(job, { ...request, stays });
      const there = leavesOf(next.layout, job).find((leaf) => leaf.x === x && leaf.y === y);
      expect(there?.node).toMatchObject({ kind: "piece", piece: choice.piece, width: choice.width });
      expect(lawsBrokenBy(job, { ...request, stays })).toEqual([]);
    }
  });
});

// Without a top there is no ring of plain cloth round an all-over back: pieces lie at its very edge.
it("with bias or unknown grain outside is offered inside the back, and not at its edge", () => {
  const straight = { ...jobOf("real-r.5-s1", "any"), top: null };
  const { layout } = makePlan(straight, { style: "all-over", seed: 1, effort });
  const job = {
    ...straight,
    pieces: straight.pieces.map((piece) => ({ ...piece, grain: "unknown" }) as const),
  };
  const offered = leavesOf(layout, job).map((cell) => {
    const { node, x, y } = cell;
    return {
      atEdge: x === 0 || y === 0 || x + node.width === layout.width || y + node.height === layout.height,
      before: choicesFor(cell, layout, straight).length,
      now: choicesFor(cell, layout, job).length,
    };
  });
  expect(offered.some(({ atEdge, now }) => !atEdge && now > 0)).toBe(true);
  expect(offered.some(({ atEdge, before }) => atEdge && before > 0)).toBe(true);
  expect(offered.filter(({ atEdge, now }) => atEdge && now > 0)).toEqual([]);
});
