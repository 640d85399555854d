import type { LayoutNode, LeafNode } from "../engine/layout/index.ts";
import type { Size } from "../engine/length/index.ts";
import { type DrawingTexts, type Names, type PartPlace, sentence, type Voice } from "../words/index.ts";
import { patternName, placeName, styleNames } from "./names.ts";
import { fabricNameOf, leftoverName, roleOf } from "./steps.ts";

export function drawing(voice: Voice): DrawingTexts {
  return {
    seenFromBehind: "Von hinten gesehen, wie du sie zum Nähen auslegst.",
    cutOff: "Schraffiert: wird nach dem Quilten abgeschnitten.",
    ruler: voice.length,
    nameOfPlan: (style, back) =>
      `Zeichnung der Rückseite, von hinten gesehen: ${styleNames[style]}, ${voice.size(back)}.`,
    nameOfBack: (back, top) => nameOfBack(back, top, voice),
    asList: "Die Zeichnung als Liste",
    asListWhat:
      "Reihen von oben nach unten, Plätze von links nach rechts. Maße, wie man sie fertig genäht sieht.",
    cell: (path, layout, names) => cellText(path, layout, { names, voice }),
    leaf: (node, names) => `${sentence(leafText(node, { names, voice }))}, ${voice.size(node)}`,
    fabric: (fabric, names) => sentence(fabricNameOf(fabric, names)),
    part: (node, place, names) => partText(node, place, { names, voice }),
  };
}

function nameOfBack(back: Size, top: Size | null, voice: Voice): string {
  const whole = `Zeichnung der Rückseite, ${voice.size(back)}`;
  return top === null ? `${whole}.` : `${whole}, in der Mitte das Top, ${voice.size(top)}.`;
}

type Said = { readonly names: Names; readonly voice: Voice };

function partText(node: LayoutNode, { within, index }: PartPlace, said: Said): string {
  const place = { back: "Die ganze Rückseite", below: `Reihe ${index + 1}`, beside: `Platz ${index + 1}` }[
    within
  ];
  return `${place}: ${nodeText(node, said)}, ${said.voice.size(node)}`;
}

function cellText(path: readonly number[], layout: LayoutNode, said: Said): string {
  let node = layout;
  for (const index of path) node = (node.kind === "join" ? node.parts[index] : undefined) ?? node;
  return `${sentence(placeName(path, layout))}: ${nodeText(node, said)}, ${said.voice.size(node)}`;
}

function nodeText(node: LayoutNode, said: Said): string {
  return node.kind === "join" ? joinText(node, said.voice) : leafText(node, said);
}

function joinText(node: Extract<LayoutNode, { readonly kind: "join" }>, voice: Voice): string {
  const count = voice.number(node.parts.length);
  const parts = node.direction === "beside" ? `${count} nebeneinander` : `${count} untereinander`;
  return node.pattern === undefined ? parts : `${patternName(node.pattern)}, ${parts}`;
}

function leafText(node: LeafNode, { names }: Said): string {
  switch (node.kind) {
    case "piece":
      return `${leftoverName(node.piece, names)}${node.turned ? ", auf die Seite gedreht" : ""}`;
    case "cloth":
      return roleOf(node, node.fabric, names);
    case "unit":
      return patternName(node.pattern);
    case "slab":
      return "Schnipselblock";
  }
}
