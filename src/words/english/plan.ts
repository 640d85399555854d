import type { Figures, Usable } from "../../engine/plan/index.ts";
import type { BuyRow, BuyUse } from "../../engine/supplies/index.ts";
import { boltText, roughLength, timeText } from "../measures.ts";
import type { Caution, Names } from "../types.ts";
import { sentence, type Voice } from "../voice.ts";
import { pieceName } from "./names.ts";
import { fabricNameOf } from "./steps.ts";

/** What a plan uses, takes and costs, a line each. */
export function figureLines(figures: Figures, voice: Voice): readonly string[] {
  const { covered, plain, plainCells, trimWaste, joins, cuts, seamLength, contrast, minutes } = figures;
  return [
    // Crumbs have no share: they are weighed, not measured.
    covered === 0
      ? "No leftover with a size of its own is in it."
      : `It uses ${voice.percent(covered)} of what your leftovers can cover.`,
    plainCells === 0
      ? "There is no plain cloth in it."
      : `Plain cloth: ${voice.area(plain)}, in ${voice.count(plainCells, "part", "parts")}.`,
    `${voice.count(joins, "seam", "seams")} to sew, about ${roughLength(seamLength, voice)} in all, and ${voice.count(cuts, "cut", "cuts")}.`,
    `${sentence(timeText(minutes, voice))}, cutting and pressing included.`,
    trimWaste < 0.005
      ? "Next to nothing is trimmed away."
      : `${voice.percent(trimWaste)} of the leftovers used is trimmed away.`,
    ...(contrast === null ? [] : [contrastLine(contrast, voice)]),
  ];
}

/** An area that is the same once it is rounded is as good. */
export function usableText({ used, most, time }: Usable, { area }: Voice): string {
  const when = time === "any" ? "" : " in this time";
  return area(used) === area(most)
    ? `That is ${area(used)}, the most that any plan${when} can use.`
    : `That is ${area(used)}; no plan${when} can use more than ${area(most)}.`;
}

/** Steps of the ladder: common practice, as no published threshold for cloth is known. */
function contrastLine(contrast: number, { trade, number }: Voice): string {
  const steps = number(Math.round(contrast));
  return `Contrast between ${trade.neighbours} is ${contrastName(contrast)} (${steps} steps of value out of 100).`;
}

export function contrastName(contrast: number): string {
  if (contrast < 5) return "next to nothing";
  if (contrast < 15) return "low";
  return contrast < 30 ? "medium" : "strong";
}

export function buyText(
  { use, fabric, width, length }: BuyRow,
  names: Pick<Names, "fabrics">,
  voice: Voice,
): string {
  return `${boltText(length, voice)} of ${fabricNameOf(fabric, names)}, ${voice.length(width)} wide, for the ${buyUseName(use, voice)} (${voice.length(length)} are needed).`;
}

function buyUseName(use: BuyUse, { trade }: Voice): string {
  switch (use) {
    case "plain":
      return "plain parts";
    case "binding":
      return "binding";
    case "batting":
      return trade.batting;
    case "sleeve":
      return "hanging sleeve";
    case "label":
      return "label";
  }
}

type Unused = readonly { readonly piece: string; readonly count: number }[];

// A summary names a handful; the plan's own list has them all.
const mostNamed = 8;

/** What stays on the shelf. */
export function unusedText(unused: Unused, voice: Voice): string {
  if (unused.length === 0) return "Every leftover is used.";
  const total = unused.reduce((sum, { count }) => sum + count, 0);
  const named = unused
    .slice(0, mostNamed)
    .map(({ piece, count }) =>
      count > 1 ? `${voice.number(count)} of ${pieceName(piece)}` : pieceName(piece),
    );
  const more = unused.length > mostNamed ? ["others"] : [];
  return `${voice.count(total, "piece stays", "pieces stay")} over: ${voice.list([...named, ...more])}.`;
}

/** Sources of the advice: extension services and paediatric guidance; each is said once, where the tool is picked up. */
export function cautionText(caution: Caution, { trade }: Voice): string {
  switch (caution) {
    case "cutter":
      return "Rotary cutter: cut away from yourself, keep your fingers off the ruler's edge, and close the blade each time you lay it down. Keep it from children.";
    case "pins":
      return "Pins: take them out before the needle reaches them, and pick up at once what falls.";
    case "machine":
      return "Sewing machine: take your foot off the pedal while you thread it, and unplug it when you are done.";
    case "iron":
      return "Iron: stay with it while it is hot, and switch it off when you leave the room.";
    case "infants":
      return `A baby quilt is for play while someone watches. It does not belong in the ${trade.crib} of a sleeping baby under one year.`;
  }
}
