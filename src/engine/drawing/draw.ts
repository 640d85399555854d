import type { Fabric, Job } from "../cloth/index.ts";
import { type LayoutNode, outerSeams } from "../layout/index.ts";
import {
  areaOf,
  centimetres,
  type DisplayUnit,
  inches,
  type Length,
  length,
  type Size,
  subtract,
} from "../length/index.ts";
import type { Plan } from "../plan/index.ts";
import { clothsOf, type DrawnPiece } from "./patches.ts";
import { drawNode } from "./shapes.ts";
import type { Drawing, Patch, Rect, Ruler, Shape, ShownFabric } from "./types.ts";

/** What a drawing of a back needs of its plan. */
export type DrawnPlan = Pick<Plan, "unit" | "seam" | "plainSeam" | "back" | "fabrics" | "layout"> & {
  readonly top: Size | null;
  readonly pieces: readonly DrawnPiece[];
};

/** The whole back, raw edge to raw edge. */
export function drawPlan(plan: DrawnPlan): Drawing {
  const { unit, seam, back, layout, top } = plan;
  const look = { cloths: clothsOf(plan), plainSeam: plan.plainSeam };
  const { shapes, seams } = drawNode(layout, { x: seam, y: seam }, outerSeams(plan), look);
  return {
    seenFrom: "behind",
    unit,
    size: back,
    shapes,
    seams,
    edges: [{ x: length(0), y: length(0), ...back }],
    allowances: [inside(layout, seam)],
    cutOff: top && { outline: outlineOf(top, back) },
    ruler: rulerFor(back, unit),
    fabrics: fabricsIn(shapes, plan.fabrics),
  };
}

function inside({ width, height }: LayoutNode, seam: Length): Rect {
  return { x: seam, y: seam, width, height };
}

/** The top lies in the middle of its back. */
function outlineOf(top: Size, back: Size): Rect {
  return {
    x: half(subtract(back.width, top.width)),
    y: half(subtract(back.height, top.height)),
    width: top.width,
    height: top.height,
  };
}

function half(size: Length): Length {
  return length(Math.round(size / 2));
}

const rulers: Record<DisplayUnit, readonly Ruler[]> = {
  in: [12, 6, 3, 1].map((count) => ({ length: inches(count), every: inches(1, count > 3 ? 1 : 4) })),
  cm: [30, 10, 5, 2].map((count) => ({ length: centimetres(count), every: centimetres(count > 5 ? 5 : 1) })),
};

/** The longest ruler that is at most half as long as the drawing is wide. */
export function rulerFor({ width }: Size, unit: DisplayUnit): Ruler {
  const fits = rulers[unit].find((ruler) => 2 * ruler.length <= width);
  return (
    fits ?? {
      length: unit === "in" ? inches(1) : centimetres(2),
      every: unit === "in" ? inches(1) : centimetres(1),
    }
  );
}

export function fabricsIn(shapes: readonly Shape[], fabrics: Job["fabrics"]): ShownFabric[] {
  const areas = new Map<string, number>();
  for (const patch of shapes.flatMap((shape) => shape.patches)) {
    areas.set(patch.fabric, (areas.get(patch.fabric) ?? 0) + areaInside(patch));
  }
  return fabrics
    .flatMap((fabric: Fabric) => {
      const area = areas.get(fabric.id);
      return area === undefined ? [] : [{ fabric, area: areaOf(area) }];
    })
    .toSorted((a, b) => b.area - a.area);
}

// Half the sum of the cross products of its sides, in (1/320 mm)²; halves of a unit are beside the point here.
function areaInside({ outline }: Patch): number {
  const doubled = outline.reduce((total, { x, y }, index) => {
    const next = outline[(index + 1) % outline.length];
    return next ? total + x * next.y - next.x * y : total;
  }, 0);
  return Math.round(Math.abs(doubled) / 2);
}
