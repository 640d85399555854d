import fc from "fast-check";
import type { Job, Piece, SizedPiece } from "../../src/engine/cloth/index.ts";
import type { ClothNode, JoinNode, LayoutNode } from "../../src/engine/layout/index.ts";
import {
  type Cut,
  cut,
  type Finished,
  finished,
  inches,
  type Length,
  length,
} from "../../src/engine/length/index.ts";

/** Layouts of plain cloth and jobs for them, made up: nothing in them is anyone's. */

export function eighths(count: number): Length {
  return inches(count, 8);
}

export function madeLength(
  id: string,
  width: number,
  height: number,
  more: Partial<SizedPiece> = {},
): SizedPiece {
  return {
    id,
    kind: "length",
    width: cut(eighths(width * 8)),
    height: cut(eighths(height * 8)),
    count: 1,
    fabric: "moss",
    keep: "cut",
    use: "yes",
    direction: "none",
    grain: "straight",
    washed: null,
    cloth: "",
    name: "",
    ...more,
  };
}

export function madeJob(pieces: readonly Piece[], more: Partial<Job> = {}): Job {
  const fabrics = ["plain", ...new Set(pieces.map(({ fabric }) => fabric))];
  return {
    unit: "in",
    step: inches(1, 8),
    seam: inches(1, 4),
    plainSeam: inches(1, 2),
    top: null,
    back: { width: inches(81, 2), height: inches(161, 2) },
    time: "any",
    wishes: [],
    contrast: "mixed",
    floor: inches(5, 2),
    clothWidth: inches(42),
    plain: "plain",
    fabrics: fabrics.map((id) => ({ id, name: id, colour: "#ccc", colours: [] })),
    pieces,
    ...more,
  };
}

export function madeCloth(width: number, height: number, fabric = "plain"): ClothNode {
  return {
    kind: "cloth",
    role: "plain",
    fabric,
    source: "buy",
    width: finished(eighths(width * 8)),
    height: finished(eighths(height * 8)),
  };
}

export function madeJoin(
  direction: JoinNode["direction"],
  seam: Length,
  parts: readonly LayoutNode[],
): JoinNode {
  const sum = (side: "width" | "height") => length(parts.reduce((total, part) => total + part[side], 0));
  const most = (side: "width" | "height") => length(Math.max(...parts.map((part) => part[side])));
  const size =
    direction === "beside"
      ? { width: finished(sum("width")), height: finished(most("height")) }
      : { width: finished(most("width")), height: finished(sum("height")) };
  return { kind: "join", direction, seam, parts, ...size };
}

export function cutSize(width: number, height: number): { readonly width: Cut; readonly height: Cut } {
  return { width: cut(eighths(width * 8)), height: cut(eighths(height * 8)) };
}

type Split = { readonly parts: readonly number[]; readonly fabric: number };

/** Cloth of given fabrics, 40 × 80 in finished, parted at random down to cells of 2 in. */
export function clothLayouts(fabrics: readonly string[]): fc.Arbitrary<LayoutNode> {
  const split = fc.record({
    parts: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 2, maxLength: 4 }),
    fabric: fc.nat(100),
  });
  return fc.array(split, { minLength: 1, maxLength: 40 }).map((splits) => {
    const left = [...splits];
    return parted(finished(inches(40)), finished(inches(80)), { left, fabrics, direction: "below" });
  });
}

type Making = {
  readonly left: Split[];
  readonly fabrics: readonly string[];
  readonly direction: JoinNode["direction"];
};

function parted(width: Finished, height: Finished, making: Making): LayoutNode {
  const next = making.left.shift();
  const fabric = making.fabrics[(next?.fabric ?? 0) % making.fabrics.length] ?? "plain";
  const whole: ClothNode = { kind: "cloth", role: "plain", fabric, source: "buy", width, height };
  const beside = making.direction === "beside";
  const sizes = next === undefined ? [] : shares(beside ? width : height, next.parts);
  if (sizes.length < 2) return whole;
  const inner: Making = { ...making, direction: beside ? "below" : "beside" };
  const parts = sizes.map((size) => (beside ? parted(size, height, inner) : parted(width, size, inner)));
  const seam = parts.every(({ kind }) => kind === "cloth") ? inches(1, 2) : inches(1, 4);
  return { kind: "join", direction: making.direction, seam, parts, width, height };
}

/** Shares on the ruler, or none where one would be under 2 in. */
function shares(total: Length, weights: readonly number[]): readonly Finished[] {
  const steps = total / inches(1, 8);
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const ends = weights.map((_, index) =>
    weights.slice(0, index + 1).reduce((sum, weight) => sum + weight, 0),
  );
  const marks = [0, ...ends.map((end) => Math.round((end * steps) / all))];
  const sizes = marks.slice(1).map((mark, index) => finished(eighths(mark - (marks[index] ?? 0))));
  return sizes.every((size) => size >= inches(2)) ? sizes : [];
}
