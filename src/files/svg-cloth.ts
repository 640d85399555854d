import { type Drawing, marksOf, type PatchMark, type Scale, type SeamKind } from "../engine/drawing/index.ts";
import { fillOf, overCloth, type Theme } from "./svg-colour.ts";
import { type Attributes, element } from "./svg-text.ts";

/** Cloth, seams and cut-off edge, with the drawing's upper left corner at 0, 0. */
export function clothOf(drawing: Drawing, scale: Scale, theme: Theme): readonly string[] {
  const { patches, prints, allowances, seams, cutOff, edges } = marksOf(drawing, scale);
  return [
    ...patches.map((patch) => patchOf(patch, theme)),
    ...prints.map(({ d, lab, broken }) => line(d, fillOf(lab, theme), broken ? brokenPrint : {})),
    ...(allowances === "" ? [] : pair(allowances, { dark: 0.5, light: 1.3 }, stitches)),
    ...seams.flatMap(({ kind, d }) => pair(d, seamWidths[kind], { opacity: 0.85 })),
    ...(cutOff === null
      ? []
      : [
          line(cutOff.light, overCloth.light, thin),
          line(cutOff.dark, overCloth.dark, thin),
          ...pair(cutOff.outline, { dark: 1.1, light: 2.6 }, { "stroke-dasharray": "7 4" }),
        ]),
    // A hairline, since cloth may be as light as the page.
    line(edges, theme.ink, { "stroke-opacity": 0.45 }),
  ];
}

function patchOf(patch: PatchMark, theme: Theme): string {
  const fill = fillOf(patch.lab, theme);
  if (patch.kind === "box") return element("rect", { ...patch.box, fill });
  // A hair of its own colour closes the slit that a slanted edge leaves between two patches.
  return element("path", { d: patch.d, fill, stroke: fill, "stroke-width": 0.4 });
}

const brokenPrint: Attributes = { "stroke-dasharray": "10 6" };
// Allowances are a fine dash, as stitches are drawn in the trade.
const stitches: Attributes = { opacity: 0.55, "stroke-dasharray": "2 2.4" };
const thin: Attributes = { "stroke-width": 0.6, "stroke-opacity": 0.5 };

type Stroke = { readonly dark: number; readonly light: number };

const seamWidths: Readonly<Record<SeamKind, Stroke>> = {
  piecing: { dark: 0.9, light: 2.3 },
  plain: { dark: 0.9, light: 2.3 },
  inside: { dark: 0.7, light: 1.7 },
  "by-eye": { dark: 0.4, light: 1 },
};

function pair(d: string, { dark, light }: Stroke, attributes: Attributes): readonly string[] {
  return [
    line(d, overCloth.light, { "stroke-width": light, "stroke-opacity": 0.6, ...attributes }),
    line(d, overCloth.dark, { "stroke-width": dark, "stroke-opacity": 0.9, ...attributes }),
  ];
}

function line(d: string, stroke: string, attributes: Attributes): string {
  return element("path", { d, fill: "none", stroke, ...attributes });
}
