import type { Lab } from "../cloth/index.ts";
import { type Length, subtract } from "../length/index.ts";
import type { Drawing, Patch, Point, Rect, Seam, Shape } from "./types.ts";

/**
 * How a drawing is looked at: `cloth`: with the pictures of her cloth, where there are any; `value`: cloth in greys, by its CIELAB L*; `seams`: nothing but the lines;
 * `to-go`: what is not sewn yet pale; `through-top`: as it lies under its top, left and right changed places.
 */
export const views = ["cloth", "colour", "value", "seams", "to-go", "through-top"] as const;
export type View = (typeof views)[number];

/** `isToGo`: of a cell by its place among the shapes, whether it is still to be sewn. */
export function drawingInView(
  drawing: Drawing,
  view: View,
  isToGo: (cell: number) => boolean = () => false,
): Drawing {
  switch (view) {
    case "cloth":
    case "colour":
      return drawing;
    case "value":
      return withCloth(drawing, (shape) => ({ ...shape, patches: shape.patches.map(inGreys) }));
    case "seams":
      return withCloth(drawing, ({ print: _, ...shape }) => ({
        ...shape,
        patches: shape.patches.map((patch) => ({ ...patch, lab: pale })),
      }));
    case "to-go":
      return withCloth(drawing, ({ print, ...shape }, cell) =>
        isToGo(cell)
          ? { ...shape, patches: shape.patches.map(faded) }
          : { ...shape, ...(print === undefined ? {} : { print }) },
      );
    case "through-top":
      return mirrored(drawing);
  }
}

/** Of cloth that is to be told apart by its seams alone. */
const pale: Lab = { l: 94, a: 0, b: 0 };

/** Hardly more than a breath of its colour. */
function faded(patch: Patch): Patch {
  const { l, a, b } = patch.lab ?? pale;
  return { ...patch, lab: { l: pale.l - (pale.l - l) / 12, a: a / 6, b: b / 6 } };
}

function withCloth(drawing: Drawing, change: (shape: Shape, cell: number) => Shape): Drawing {
  return { ...drawing, shapes: drawing.shapes.map(change) };
}

function inGreys(patch: Patch): Patch {
  return { ...patch, lab: patch.lab === null ? null : greyOf(patch.lab) };
}

/** As light, and without its colour. */
export function greyOf({ l }: Lab): Lab {
  return { l, a: 0, b: 0 };
}

/** Flipped left to right. Twice is as before. */
export function mirrored(drawing: Drawing): Drawing {
  const { width } = drawing.size;
  const flip = (rect: Rect) => mirroredRect(rect, width);
  const { cutOff } = drawing;
  return {
    ...drawing,
    seenFrom: drawing.seenFrom === "behind" ? "front" : "behind",
    shapes: drawing.shapes.map((shape) => mirroredShape(shape, width)),
    seams: drawing.seams.map((seam) => mirroredSeam(seam, width)),
    edges: drawing.edges.map(flip),
    allowances: drawing.allowances.map(flip),
    cutOff: cutOff === null ? null : { outline: flip(cutOff.outline) },
  };
}

/** Where a part of a drawing of that width lies once it is flipped. */
export function mirroredRect<R extends Rect>(rect: R, width: Length): R {
  return { ...rect, x: subtract(width, rect.x, rect.width) };
}

function mirroredShape(shape: Shape, width: Length): Shape {
  const flip = ({ x, y }: Point): Point => ({ x: subtract(width, x), y });
  const patches = shape.patches.map((patch) => ({ ...patch, outline: patch.outline.map(flip) }));
  return { ...mirroredRect(shape, width), patches };
}

function mirroredSeam(seam: Seam, width: Length): Seam {
  return { ...seam, x1: subtract(width, seam.x1), x2: subtract(width, seam.x2) };
}
