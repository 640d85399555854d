import { add, assert, inches, type Length, length, type Size } from "../length/index.ts";
import { type Sewn, sewnByStep } from "../sewing/index.ts";
import { type DrawnPlan, fabricsIn, rulerFor } from "./draw.ts";
import { clothsOf } from "./patches.ts";
import { type Drawn, drawNode, type Look } from "./shapes.ts";
import type { Drawing, Point, Rect } from "./types.ts";

/** Between parts that are laid out to be joined. */
const gap: Length = inches(1, 2);

/**
 * What one step sews: its parts as they are laid, in cut size, a little apart; a unit or slab as it comes out.
 * `id`: a step of `stepsFor` for this plan's layout.
 */
export function drawStep(plan: DrawnPlan, id: string): Drawing {
  const sewn = sewnByStep(plan.layout, plan).get(id);
  assert(sewn !== undefined, `step ${id} is a step of this plan`);
  const look: Look = { cloths: clothsOf(plan), plainSeam: plan.plainSeam };
  const laid = partsLaid(sewn);
  const drawn = laid.map(({ part, at }) => drawPart(part, at, look));
  const shapes = drawn.flatMap((part) => part.shapes);
  const size = sizeOf(laid);
  return {
    seenFrom: "behind",
    unit: plan.unit,
    size,
    shapes,
    seams: drawn.flatMap((part) => part.seams),
    edges: laid.map(({ part, at }) => ({ ...at, ...part.cut })),
    allowances: laid.map(allowanceOf),
    cutOff: null,
    ruler: rulerFor(size, plan.unit),
    fabrics: fabricsIn(shapes, plan.fabrics),
  };
}

/**
 * Where in the back the thing lies that a step sews, in the coordinates of `drawPlan`. `id` as for `drawStep`.
 */
export function placeOfStep(plan: DrawnPlan, id: string): Rect {
  const steps = sewnByStep(plan.layout, plan);
  const wanted = steps.get(id);
  // Everything stands behind what it is made of, so the back is the last.
  const back = [...steps.values()].at(-1);
  const found = wanted && back && placeWithin(back, wanted, { x: plan.seam, y: plan.seam });
  assert(found !== undefined && found !== null, `step ${id} sews a part of this plan`);
  return found;
}

function placeWithin(part: Sewn, wanted: Sewn, at: Point): Rect | null {
  if (part === wanted) return { ...at, width: part.node.width, height: part.node.height };
  if (!("parts" in part)) return null;
  let corner = at;
  for (const inner of part.parts) {
    const found = placeWithin(inner, wanted, corner);
    if (found !== null) return found;
    corner =
      part.node.direction === "beside"
        ? { ...corner, x: add<Length>(corner.x, inner.node.width) }
        : { ...corner, y: add<Length>(corner.y, inner.node.height) };
  }
  return null;
}

/** A part with the upper left corner of its cut size. */
type Laid = { readonly part: Sewn; readonly at: Point };

function partsLaid(sewn: Sewn): Laid[] {
  const origin: Point = { x: length(0), y: length(0) };
  if (!("parts" in sewn)) return [{ part: sewn, at: origin }];
  let at = origin;
  return sewn.parts.map((part) => {
    const laid = { part, at };
    at =
      sewn.node.direction === "beside"
        ? { ...at, x: add<Length>(at.x, part.cut.width, gap) }
        : { ...at, y: add<Length>(at.y, part.cut.height, gap) };
    return laid;
  });
}

function drawPart(part: Sewn, at: Point, look: Look): Drawn {
  return drawNode(part.node, cellCorner(part, at), part.seams, look);
}

function cellCorner({ seams }: Sewn, at: Point): Point {
  return { x: add<Length>(at.x, seams.left), y: add<Length>(at.y, seams.top) };
}

function allowanceOf({ part, at }: Laid): Rect {
  return { ...cellCorner(part, at), width: part.node.width, height: part.node.height };
}

function sizeOf(laid: readonly Laid[]): Size {
  const right = laid.map(({ part, at }) => at.x + part.cut.width);
  const bottom = laid.map(({ part, at }) => at.y + part.cut.height);
  return { width: length(Math.max(...right)), height: length(Math.max(...bottom)) };
}
