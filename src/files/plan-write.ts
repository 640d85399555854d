import type { LayoutNode, LeftLong, UnitCloth } from "../engine/layout/index.ts";
import { areaToNumber, type DisplayUnit, type Length, type Size, toNumber } from "../engine/length/index.ts";
import type { Figures } from "../engine/plan/index.ts";
import type { Step, StepPart } from "../engine/sewing/index.ts";
import type { BuyRow } from "../engine/supplies/index.ts";
import {
  type DocumentPiece,
  type DocumentTop,
  type PlanDocument,
  planFormat,
  planVersion,
} from "./plan-document.ts";

/** The plan's file: JSON, numbers in the plan's unit and never rounded. A `Plan` is a `PlanDocument`. */
export function writePlan(plan: PlanDocument): string {
  return toText(planToJson(plan));
}

/** One plan as itself, several as a list of them. */
export function writePlans(plans: readonly PlanDocument[]): string {
  const [only, ...more] = plans;
  return only && more.length === 0 ? writePlan(only) : toText(plans.map(planToJson));
}

function toText(json: object): string {
  return `${JSON.stringify(json, null, 1)}\n`;
}

/** As the format has it; absent fields are `undefined`, which JSON leaves out. */
function planToJson(plan: PlanDocument): object {
  const { unit } = plan;
  const to = (size: Length) => toNumber(size, unit);
  return {
    format: planFormat,
    version: planVersion,
    unit,
    step: to(plan.step),
    seam: to(plan.seam),
    plainSeam: to(plan.plainSeam),
    floor: to(plan.floor),
    top: plan.top && topToJson(plan.top, unit),
    back: sizeToJson(plan.back, unit),
    style: plan.style,
    seed: plan.seed,
    effort: plan.effort,
    byHand: plan.byHand,
    fabrics: plan.fabrics.map(({ id, name, colour }) => ({ id, name, colour })),
    pieces: plan.pieces.map((piece) => pieceToJson(piece, unit)),
    layout: nodeToJson(plan.layout, unit),
    unused: plan.unused.map(({ piece, count }) => ({ piece, count })),
    steps: plan.steps.map((step) => stepToJson(step, unit)),
    buy: plan.buy.map((row) => buyToJson(row, unit)),
    figures: figuresToJson(plan.figures, unit),
  };
}

function sizeToJson({ width, height }: Size, unit: DisplayUnit): { width: number; height: number } {
  return { width: toNumber(width, unit), height: toNumber(height, unit) };
}

function leftLongToJson(
  { leftLong }: { readonly leftLong?: LeftLong },
  unit: DisplayUnit,
): object | undefined {
  if (leftLong === undefined) return undefined;
  const { width, height } = leftLong;
  const to = (size: Length | undefined) => (size === undefined ? undefined : toNumber(size, unit));
  return { width: to(width), height: to(height) };
}

function topToJson(top: DocumentTop, unit: DisplayUnit): object {
  return { ...sizeToJson(top, unit), extra: toNumber(top.extra, unit), method: top.method };
}

function pieceToJson(piece: DocumentPiece, unit: DisplayUnit): object {
  const { id, kind, count, fabric, keep, use, direction, name } = piece;
  const size = piece.kind === "crumbs" ? { area: areaToNumber(piece.area, unit) } : sizeToJson(piece, unit);
  return { id, kind, ...size, count, fabric, keep, use, direction, name };
}

function nodeToJson(node: LayoutNode, unit: DisplayUnit): object {
  const size = sizeToJson(node, unit);
  switch (node.kind) {
    case "join": {
      const { kind, direction, pattern } = node;
      const parts = node.parts.map((part) => nodeToJson(part, unit));
      return { kind, direction, seam: toNumber(node.seam, unit), pattern, ...size, parts };
    }
    case "piece": {
      const { kind, piece, turned, quarter, copy } = node;
      return { kind, piece, turned, quarter, copy, ...size, leftLong: leftLongToJson(node, unit) };
    }
    case "unit": {
      const { kind, pattern, rotations, pieces } = node;
      const cloth = node.cloth.map((one) => unitClothToJson(one, unit));
      return { kind, pattern, rotations, pieces: pieces.map(takenToJson), cloth, ...size };
    }
    case "slab": {
      const { kind, crumbs, pieces } = node;
      return { kind, crumbs, pieces: pieces?.map(takenToJson), ...size };
    }
    case "cloth": {
      const { kind, role, fabric, source } = node;
      return { kind, role, fabric, source, ...size, leftLong: leftLongToJson(node, unit) };
    }
  }
}

type Taken = { readonly piece: string; readonly count: number };

function takenToJson({ piece, count }: Taken): Taken {
  return { piece, count };
}

function unitClothToJson(cloth: UnitCloth, unit: DisplayUnit): object {
  const { fabric, source, count } = cloth;
  return { fabric, source, ...sizeToJson(cloth, unit), count };
}

function stepToJson(step: Step, unit: DisplayUnit): object {
  const { id, kind, direction, pattern, press, squareUp } = step;
  return {
    id,
    kind,
    pattern,
    direction,
    from: step.from.map((part) => partToJson(part, unit)),
    seam: toNumber(step.seam, unit),
    press,
    unfinished: sizeToJson(step.unfinished, unit),
    finished: sizeToJson(step.finished, unit),
    leftLong: leftLongToJson(step, unit),
    squareUp: squareUp && sizeToJson(squareUp, unit),
  };
}

function partToJson(part: StepPart, unit: DisplayUnit): object {
  const laid = { count: part.count, ...sizeToJson(part, unit), leftLong: leftLongToJson(part, unit) };
  if ("piece" in part) {
    const { piece, copy, turned, quarter } = part;
    return { piece, copy, turned, quarter, ...laid };
  }
  if ("step" in part) return { step: part.step, ...laid };
  const { cloth, source, role } = part;
  return { cloth, source, role, ...laid };
}

function buyToJson(row: BuyRow, unit: DisplayUnit): object {
  const { use, fabric, width, length } = row;
  return { use, fabric, width: toNumber(width, unit), length: toNumber(length, unit) };
}

function figuresToJson(figures: Figures, unit: DisplayUnit): object {
  return {
    covered: figures.covered,
    plain: areaToNumber(figures.plain, unit),
    plainCells: figures.plainCells,
    trimWaste: figures.trimWaste,
    joins: figures.joins,
    cuts: figures.cuts,
    seamLength: toNumber(figures.seamLength, unit),
    contrast: figures.contrast,
    minutes: figures.minutes,
  };
}
