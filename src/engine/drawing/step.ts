import type { Seams } from "../layout/index.ts";
import { add, assert, inches, type Length, length, type Size, subtract } from "../length/index.ts";
import { type Sewn, sewnByStep, sidesOf, takenSize } from "../sewing/index.ts";
import { type DrawnPlan, fabricsIn, rulerFor } from "./draw.ts";
import { clothsOf } from "./patches.ts";
import { type Drawn, drawNode, type Look } from "./shapes.ts";
import type { Drawing, Point, Rect } from "./types.ts";

/** Between parts that are laid out to be joined. */
const gap: Length = inches(1, 2);

/**
 * What one step sews: its parts as they are laid, in cut size, a little apart, what is left long standing over; a unit
 * or slab as it comes out.
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
    edges: laid.map(({ part, at }) => ({ ...at, ...takenSize(laidAs(part)) })),
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

/** A part with the upper left corner of its cut size, and of what is left long. */
type Laid = { readonly part: Sewn; readonly at: Point };

function partsLaid(sewn: Sewn): Laid[] {
  const origin: Point = { x: length(0), y: length(0) };
  if (!("parts" in sewn)) return [{ part: sewn, at: origin }];
  const { along, across } = sidesOf(sewn.node.direction);
  // What is left long stands over; the cells themselves lie in one line.
  const line = Math.max(...sewn.parts.map((part) => startLong(part, across)));
  let next = length(0);
  return sewn.parts.map((part) => {
    const inLine = length(line - startLong(part, across));
    const at: Point = along === "width" ? { x: next, y: inLine } : { x: inLine, y: next };
    next = add<Length>(next, takenSize(laidAs(part))[along], gap);
    return { part, at };
  });
}

function laidAs({ cut, leftLong }: Sewn) {
  return { ...cut, leftLong };
}

function drawPart(part: Sewn, at: Point, look: Look): Drawn {
  const { left, right, top, bottom } = part.seams;
  const { width = none, height = none } = part.leftLong;
  const [before, above] = [startLong(part, "width"), startLong(part, "height")];
  const raw: Seams = {
    left: add(left, before),
    right: subtract(add(right, width), before),
    top: add(top, above),
    bottom: subtract(add(bottom, height), above),
  };
  return drawNode(part.node, cellCorner(part, at), raw, look);
}

/** How much of what is left long stands over on the left or above: at the end of the row at which the cloth is that gives. */
function startLong(part: Sewn, side: "width" | "height"): Length {
  const whole = part.leftLong[side] ?? none;
  if (!("parts" in part) || whole === 0) return none;
  const [first] = part.parts;
  if (first === undefined) return none;
  return sidesOf(part.node.direction).along === side
    ? (first.leftLong[side] ?? none)
    : startLong(first, side);
}

const none = length(0);

function cellCorner(part: Sewn, at: Point): Point {
  return {
    x: add<Length>(at.x, part.seams.left, startLong(part, "width")),
    y: add<Length>(at.y, part.seams.top, startLong(part, "height")),
  };
}

function allowanceOf({ part, at }: Laid): Rect {
  return { ...cellCorner(part, at), width: part.node.width, height: part.node.height };
}

function sizeOf(laid: readonly Laid[]): Size {
  const right = laid.map(({ part, at }) => at.x + takenSize(laidAs(part)).width);
  const bottom = laid.map(({ part, at }) => at.y + takenSize(laidAs(part)).height);
  return { width: length(Math.max(...right)), height: length(Math.max(...bottom)) };
}
