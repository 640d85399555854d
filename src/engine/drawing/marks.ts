import type { Lab } from "../cloth/index.ts";
import type { Size } from "../length/index.ts";
import type { Drawing, Patch, Rect, Seam, SeamKind, Shape } from "./types.ts";

/** Pixels for a length. */
export type Scale = (units: number) => number;

/** The scale at which the longer side takes `longest` pixels. */
export function scaleFitting({ width, height }: Size, longest: number): Scale {
  return (units) => (units * longest) / Math.max(width, height);
}

/** A rectangle on the page, in pixels. */
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/**
 * A drawing as it is put on a page: rectangles and outlines (`d`, as SVG, canvas and PDF all take them), in the
 * order in which they are drawn. How wide and in which ink is for the page to say.
 */
export type Marks = {
  readonly width: number;
  readonly height: number;
  readonly patches: readonly PatchMark[];
  readonly prints: readonly PrintMark[];
  readonly allowances: string;
  /** Fine ones first, so that the seams between cells lie on top. */
  readonly seams: readonly { readonly kind: SeamKind; readonly d: string }[];
  readonly cutOff: CutOffMarks | null;
  readonly edges: string;
};

/** `lab`: its own colour; null where she gave none. A patch is a whole cell or lies slanted in one. */
export type PatchMark = { readonly lab: Lab | null } & (
  | { readonly kind: "box"; readonly box: Box }
  | { readonly kind: "slanted"; readonly d: string }
);

/** Fine stripes in a tone of the cloth: which way a print runs. Broken where it has an up. */
export type PrintMark = { readonly d: string; readonly lab: Lab; readonly broken: boolean };

/** The hatching twice, side by side: one upon the other they would cancel out on cloth of a middle value. */
export type CutOffMarks = { readonly dark: string; readonly light: string; readonly outline: string };

export function marksOf(drawing: Drawing, scale: Scale): Marks {
  const { size, shapes, allowances, edges } = drawing;
  return {
    width: rounded(scale(size.width)),
    height: rounded(scale(size.height)),
    patches: shapes.flatMap((shape) => shape.patches.map((patch) => patchMark(shape, patch, scale))),
    prints: shapes.flatMap((shape) => printMarks(shape, scale)),
    allowances: framesPath(allowances, scale),
    seams: seamMarks(drawing.seams, scale),
    cutOff: cutOffMarks(drawing, scale),
    edges: framesPath(edges, scale),
  };
}

function patchMark(shape: Shape, { lab, outline }: Patch, scale: Scale): PatchMark {
  if (shape.patches.length === 1) return { kind: "box", box: boxOf(shape, scale), lab };
  const corners = outline.map(({ x, y }) => `${rounded(scale(x))} ${rounded(scale(y))}`);
  return { kind: "slanted", d: `M${corners.join("L")}Z`, lab };
}

const stripeEvery = 7;

function printMarks({ print, patches, ...shape }: Shape, scale: Scale): readonly PrintMark[] {
  const lab = patches[0]?.lab ?? null;
  if (!print || lab === null) return [];
  const { x, y, width, height } = boxOf(shape, scale);
  const upright = print.along === "height";
  const lines = placesAlong(upright ? width : height).map((at) =>
    upright ? `M${rounded(x + at)} ${y}v${height}` : `M${x} ${rounded(y + at)}h${width}`,
  );
  return lines.length === 0
    ? []
    : [{ d: lines.join(""), lab: toneOf(lab), broken: print.direction === "one-way" }];
}

/** Places for stripes, the first half as far from the edge as they are apart. */
function placesAlong(side: number): readonly number[] {
  const count = Math.max(0, Math.round(side / stripeEvery));
  return Array.from({ length: count }, (_, index) => (index + 0.5) * stripeEvery).filter(
    (at) => at < side - 1,
  );
}

/** A tone of the same cloth: a little darker, or lighter where it is dark. */
function toneOf(lab: Lab): Lab {
  return { ...lab, l: lab.l > 50 ? lab.l - 6 : lab.l + 6 };
}

const finestFirst: readonly SeamKind[] = ["by-eye", "inside", "piecing", "plain"];

function seamMarks(seams: readonly Seam[], scale: Scale): Marks["seams"] {
  return finestFirst.flatMap((kind) => {
    const d = seams.filter((seam) => seam.kind === kind).map((seam) => seamPath(seam, scale));
    return d.length === 0 ? [] : [{ kind, d: d.join("") }];
  });
}

function seamPath({ x1, y1, x2, y2 }: Seam, scale: Scale): string {
  return `M${rounded(scale(x1))} ${rounded(scale(y1))}L${rounded(scale(x2))} ${rounded(scale(y2))}`;
}

function cutOffMarks({ cutOff, size }: Drawing, scale: Scale): CutOffMarks | null {
  if (cutOff === null) return null;
  const whole = { x: 0, y: 0, width: scale(size.width), height: scale(size.height) };
  const hole = boxOf(cutOff.outline, scale);
  return {
    dark: hatchPath(whole, hole),
    light: hatchPath(whole, hole, 1.3),
    outline: framesPath([cutOff.outline], scale),
  };
}

const hatchEvery = 14;

/** Lines at 45° inside `whole` and outside `hole`: on each, x + y is the same all along. */
export function hatchPath(whole: Box, hole: Box, shift = 0): string {
  const lines: string[] = [];
  const last = whole.x + whole.width + whole.y + whole.height;
  for (let sum = whole.x + whole.y + hatchEvery + shift; sum < last; sum += hatchEvery) {
    for (const [from, to] of outside(stretch(sum, whole), stretch(sum, hole))) {
      if (to - from > 0.5)
        lines.push(`M${rounded(from)} ${rounded(sum - from)}L${rounded(to)} ${rounded(sum - to)}`);
    }
  }
  return lines.join("");
}

type Stretch = readonly [from: number, to: number];

/** Between which x the line x + y = `sum` runs inside the box. */
function stretch(sum: number, { x, y, width, height }: Box): Stretch {
  return [Math.max(x, sum - y - height), Math.min(x + width, sum - y)];
}

function outside([from, to]: Stretch, [holeFrom, holeTo]: Stretch): readonly Stretch[] {
  if (holeTo <= holeFrom) return [[from, to]];
  return [
    [from, holeFrom],
    [holeTo, to],
  ];
}

function framesPath(rects: readonly Rect[], scale: Scale): string {
  return rects.map((rect) => framePath(rect, scale)).join("");
}

function framePath(rect: Rect, scale: Scale): string {
  const { x, y, width, height } = boxOf(rect, scale);
  return `M${x} ${y}h${width}v${height}h${-width}Z`;
}

/** Where a rectangle lies on the page; neighbours share their rounded edge. */
export function boxOf({ x, y, width, height }: Rect, scale: Scale): Box {
  const left = rounded(scale(x));
  const upper = rounded(scale(y));
  return {
    x: left,
    y: upper,
    width: rounded(rounded(scale(x + width)) - left),
    height: rounded(rounded(scale(y + height)) - upper),
  };
}

/** In hundredths of a pixel: finer than any screen or printer, and the same mark every time. */
export function rounded(pixels: number): number {
  return Math.round(pixels * 100) / 100 + 0;
}
