import { describe, expect, test } from "vitest";
import { cut, finished, inches, length } from "../length/index.ts";
import { type ClothNode, type JoinNode, leavesOf, mapLeaves, nodesOf } from "./index.ts";

const job = { seam: inches(1, 4) };

function cloth(width: number, height: number): ClothNode {
  return {
    kind: "cloth",
    role: "plain",
    fabric: "blue",
    source: "buy",
    width: finished(inches(width * 4, 4)),
    height: finished(inches(height * 4, 4)),
  };
}

// Two 42 in lengths with a 1/2 in seam give 83 in, as the trade counts (trade source: a forum's worked example).
const lengths: JoinNode = {
  kind: "join",
  direction: "below",
  seam: inches(1, 2),
  width: finished(inches(67)),
  height: finished(inches(165, 2)),
  parts: [cloth(67, 41.25), cloth(67, 41.25)],
};

describe("walking a layout", () => {
  test("a leaf's cut size is its cell and the seam on each side", () => {
    const [upper, lower] = leavesOf(lengths, job);
    expect(upper).toMatchObject({ cutWidth: inches(135, 2), cutHeight: inches(42), x: 0, y: 0, path: [0] });
    expect(lower).toMatchObject({ cutHeight: inches(42), x: 0, y: inches(165, 4), path: [1] });
    expect(upper?.seams).toEqual({
      left: inches(1, 4),
      right: inches(1, 4),
      top: inches(1, 4),
      bottom: inches(1, 2),
    });
  });

  test("the nearest join on a side decides its seam", () => {
    const middle: JoinNode = {
      kind: "join",
      direction: "beside",
      seam: inches(1, 4),
      width: finished(inches(30)),
      height: finished(inches(10)),
      parts: [
        cloth(10, 10),
        { ...lengths, width: finished(inches(10)), height: finished(inches(10)) },
        cloth(10, 10),
      ],
    };
    const inner = nodesOf(middle, job).find((placed) => placed.path.length === 2);
    expect(inner?.seams).toEqual({
      left: inches(1, 4),
      right: inches(1, 4),
      top: inches(1, 4),
      bottom: inches(1, 2),
    });
    expect(nodesOf(middle, job).map((placed) => placed.path)).toEqual([[], [0], [1], [1, 0], [1, 1], [2]]);
  });

  test("leaves are exchanged in their order", () => {
    let count = 0;
    const named = mapLeaves(lengths, (leaf) =>
      leaf.kind === "cloth" ? { ...leaf, fabric: `cloth-${++count}` } : leaf,
    );
    expect(leavesOf(named, job).map(({ node }) => node.kind === "cloth" && node.fabric)).toEqual([
      "cloth-1",
      "cloth-2",
    ]);
  });

  test("a lone leaf has the outer seam all round", () => {
    const [only] = leavesOf(cloth(10, 20), job);
    expect(only).toMatchObject({ cutWidth: cut(inches(21, 2)), cutHeight: cut(inches(41, 2)), x: length(0) });
  });
});
