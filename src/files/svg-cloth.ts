import type { Drawing, Patch, Rect, Seam, SeamKind, Shape } from "../engine/drawing/index.ts";
import { fillOf, overCloth, type Theme, toneOf } from "./svg-colour.ts";
import { type Attributes, element, rounded } from "./svg-text.ts";

/** Pixels for a length. */
export type Scale = (units: number) => number;

/** Cloth, seams and cut-off edge, with the drawing's upper left corner at 0, 0. */
export function clothOf(drawing: Drawing, scale: Scale, theme: Theme): readonly string[] {
  return [
    ...drawing.shapes.flatMap((shape) => shape.patches.map((patch) => patchOf(shape, patch, scale, theme))),
    ...drawing.shapes.flatMap((shape) => printOf(shape, scale, theme)),
    ...allowancesOf(drawing, scale),
    ...seamsOf(drawing.seams, scale),
    ...cutOffOf(drawing, scale),
    edgesOf(drawing, scale, theme),
  ];
}

function patchOf(shape: Shape, patch: Patch, scale: Scale, theme: Theme): string {
  const fill = fillOf(patch.lab, theme);
  if (shape.patches.length === 1) return element("rect", { ...boxOf(shape, scale), fill });
  const corners = patch.outline.map(({ x, y }) => `${rounded(scale(x))} ${rounded(scale(y))}`);
  // A hair of its own colour closes the slit that a slanted edge leaves between two patches.
  return element("path", { d: `M${corners.join("L")}Z`, fill, stroke: fill, "stroke-width": 0.4 });
}

const stripeEvery = 7;

/** Fine stripes in a tone of the cloth show which way a print runs; broken where it has an up. */
function printOf({ print, patches, ...shape }: Shape, scale: Scale, theme: Theme): readonly string[] {
  const lab = patches[0]?.lab ?? null;
  if (!print || lab === null) return [];
  const { x, y, width, height } = boxOf(shape, scale);
  const upright = print.along === "height";
  const lines = marks(upright ? width : height, stripeEvery).map((at) =>
    upright ? `M${rounded(x + at)} ${y}v${height}` : `M${x} ${rounded(y + at)}h${width}`,
  );
  const broken: Attributes = print.direction === "one-way" ? { "stroke-dasharray": "10 6" } : {};
  const stroke = fillOf(toneOf(lab), theme);
  return lines.length === 0 ? [] : [element("path", { d: lines.join(""), fill: "none", stroke, ...broken })];
}

/** Places every `every` pixels, the first half as far from the edge. */
function marks(side: number, every: number): readonly number[] {
  return Array.from(
    { length: Math.max(0, Math.round(side / every)) },
    (_, index) => (index + 0.5) * every,
  ).filter((at) => at < side - 1);
}

/** A hairline, since cloth may be as light as the page. */
function edgesOf({ edges }: Drawing, scale: Scale, theme: Theme): string {
  const d = edges.map((rect) => framePath(rect, scale)).join("");
  return element("path", { d, fill: "none", stroke: theme.ink, "stroke-opacity": 0.45 });
}

// Allowances are a fine dash, as stitches are drawn in the trade.
function allowancesOf({ allowances }: Drawing, scale: Scale): readonly string[] {
  const d = allowances.map((rect) => framePath(rect, scale)).join("");
  return d === "" ? [] : pair(d, { dark: 0.5, light: 1.3 }, { opacity: 0.55, "stroke-dasharray": "2 2.4" });
}

const seamWidths: Readonly<Record<SeamKind, Stroke>> = {
  piecing: { dark: 0.9, light: 2.3 },
  plain: { dark: 0.9, light: 2.3 },
  inside: { dark: 0.7, light: 1.7 },
  "by-eye": { dark: 0.4, light: 1 },
};

function seamsOf(seams: readonly Seam[], scale: Scale): readonly string[] {
  const kinds: readonly SeamKind[] = ["by-eye", "inside", "piecing", "plain"];
  return kinds.flatMap((kind) => {
    const d = seams.filter((seam) => seam.kind === kind).map((seam) => seamPath(seam, scale));
    return d.length === 0 ? [] : pair(d.join(""), seamWidths[kind], { opacity: 0.85 });
  });
}

type Stroke = { readonly dark: number; readonly light: number };

function pair(d: string, { dark, light }: Stroke, attributes: Attributes): readonly string[] {
  const path = (stroke: string, width: number, opacity: number) =>
    element("path", {
      d,
      fill: "none",
      stroke,
      "stroke-width": width,
      "stroke-opacity": opacity,
      ...attributes,
    });
  return [path(overCloth.light, light, 0.6), path(overCloth.dark, dark, 0.9)];
}

function seamPath({ x1, y1, x2, y2 }: Seam, scale: Scale): string {
  return `M${rounded(scale(x1))} ${rounded(scale(y1))}L${rounded(scale(x2))} ${rounded(scale(y2))}`;
}

const hatchEvery = 14;

/** What is cut off after quilting: thin hatching that leaves its cloth to be seen, and the top's outline. */
function cutOffOf({ cutOff, size }: Drawing, scale: Scale): readonly string[] {
  if (cutOff === null) return [];
  const whole = { x: 0, y: 0, width: scale(size.width), height: scale(size.height) };
  const outline = boxOf(cutOff.outline, scale);
  // Side by side: one upon the other they would cancel out on cloth of a middle value.
  const hatch = (stroke: string, shift: number) =>
    element("path", { d: hatchPath(whole, outline, shift), fill: "none", stroke, ...thin });
  return [
    hatch(overCloth.light, 1.3),
    hatch(overCloth.dark, 0),
    ...pair(framePath(cutOff.outline, scale), { dark: 1.1, light: 2.6 }, { "stroke-dasharray": "7 4" }),
  ];
}

const thin: Attributes = { "stroke-width": 0.6, "stroke-opacity": 0.5 };

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

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

function framePath(rect: Rect, scale: Scale): string {
  const { x, y, width, height } = boxOf(rect, scale);
  return `M${x} ${y}h${width}v${height}h${-width}Z`;
}

function boxOf({ x, y, width, height }: Rect, scale: Scale): Box {
  const left = rounded(scale(x));
  const upper = rounded(scale(y));
  return {
    x: left,
    y: upper,
    width: rounded(rounded(scale(x + width)) - left),
    height: rounded(rounded(scale(y + height)) - upper),
  };
}
