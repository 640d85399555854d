/** What stands round a drawing, and the drawing's equal in words. */
import type { Style } from "../engine/back/index.ts";
import type { LayoutNode, LeafNode } from "../engine/layout/index.ts";
import type { DisplayUnit, Length, Size } from "../engine/length/index.ts";
import { onePattern, placeName, styleName } from "./english/names.ts";
import { fabricNameOf, leftoverName, roleOf } from "./english/steps.ts";
import type { Locale } from "./locales.ts";
import type { Names } from "./types.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

/** A part of the layout by its place: the whole back, a row of it or a place in a row. */
export type PartPlace = { readonly within: "back" | "below" | "beside"; readonly index: number };

export type DrawingTexts = {
  readonly seenFromBehind: string;
  /** What the hatching means. */
  readonly cutOff: string;
  readonly ruler: (length: Length) => string;
  /** What a drawing shows, for who can't see it. */
  readonly nameOfPlan: (style: Style, back: Size) => string;
  readonly nameOfBack: (back: Size, top: Size | null) => string;
  readonly asList: string;
  /** That the list holds finished sizes, and how to read it. */
  readonly asListWhat: string;
  /** A cell by its place in the whole layout: "Row 3, place 5: strip 4, 2 × 9 in". */
  readonly cell: (path: readonly number[], layout: LayoutNode, names: Names) => string;
  /** What lies there or may lie there, without its place: "Square 3 (moss), 4 × 4 in". */
  readonly leaf: (node: LeafNode, names: Names) => string;
  readonly fabric: (fabric: string, names: Pick<Names, "fabrics">) => string;
  readonly part: (node: LayoutNode, place: PartPlace, names: Names) => string;
};

export function drawingTexts(locale: Locale, unit: DisplayUnit): DrawingTexts {
  return inWordSet(locale, unit, { name: "drawing", english });
}

function english(voice: Voice): DrawingTexts {
  return {
    seenFromBehind: "Seen from behind, as you lay it out to sew.",
    cutOff: "Hatched: cut away after quilting.",
    ruler: voice.length,
    nameOfPlan: (style, back) =>
      `Drawing of the back seen from behind: ${styleName(style, voice)}, ${voice.size(back)}.`,
    nameOfBack: (back, top) => nameOfBack(back, top, voice),
    asList: "The drawing as a list",
    asListWhat: "Rows from top to bottom, places from left to right. Sizes as they show once sewn.",
    cell: (path, layout, names) => cellText(path, layout, { names, voice }),
    leaf: (node, names) => `${sentence(leafText(node, { names, voice }))}, ${voice.size(node)}`,
    fabric: (fabric, names) => sentence(fabricNameOf(fabric, names)),
    part: (node, place, names) => partText(node, place, { names, voice }),
  };
}

function nameOfBack(back: Size, top: Size | null, voice: Voice): string {
  const whole = `Drawing of the back, ${voice.size(back)}`;
  return top === null ? `${whole}.` : `${whole}, with the top, ${voice.size(top)}, in its middle.`;
}

type Said = { readonly names: Names; readonly voice: Voice };

function partText(node: LayoutNode, { within, index }: PartPlace, said: Said): string {
  const place = { back: "The whole back", below: `Row ${index + 1}`, beside: `Place ${index + 1}` }[within];
  const what = node.kind === "join" ? joinText(node, said.voice) : leafText(node, said);
  return `${place}: ${what}, ${said.voice.size(node)}`;
}

function cellText(path: readonly number[], layout: LayoutNode, said: Said): string {
  let node = layout;
  for (const index of path) node = (node.kind === "join" ? node.parts[index] : undefined) ?? node;
  const what = node.kind === "join" ? joinText(node, said.voice) : leafText(node, said);
  return `${sentence(placeName(path, layout))}: ${what}, ${said.voice.size(node)}`;
}

function joinText(node: Extract<LayoutNode, { readonly kind: "join" }>, voice: Voice): string {
  const count = voice.number(node.parts.length);
  const parts = node.direction === "beside" ? `${count} side by side` : `${count} one below the other`;
  return node.pattern === undefined ? parts : `${onePattern(node.pattern)} of ${parts}`;
}

function leafText(node: LeafNode, { names }: Said): string {
  switch (node.kind) {
    case "piece":
      return `${leftoverName(node.piece, names)}${node.turned ? ", turned on its side" : ""}`;
    case "cloth":
      return roleOf(node, node.fabric, names);
    case "unit":
      return onePattern(node.pattern);
    case "slab":
      return "a slab";
  }
}
