import type { Advice, AdviceKind, BeforeWashing, Hue, Mend, Where } from "../../engine/advice/index.ts";
import { boltText } from "../measures.ts";
import type { Names } from "../types.ts";
import { sentence, type Voice } from "../voice.ts";
import { unitName } from "./names.ts";
import { fabricNameOf, leftoverName } from "./steps.ts";

/** What it is about, in a few words. */
export function adviceTitle({ kind }: Advice, { trade }: Voice): string {
  const titles: { readonly [K in AdviceKind]: string } = {
    contrast: "How well the fabrics stand apart",
    bleeding: `${sentence(trade.colours)} that may run`,
    unwashed: "Washed beside unwashed",
    weights: "Cloth of different weight",
    "dark-beside-light": "Dark beside pale",
    "dark-under-top": "Dark under the top",
    "not-upright": "Prints that do not stand upright",
    "stripes-sideways": "Stripes that run both ways",
    "print-cut-off": "Prints at the edge of the top",
    "load-sideways": "Long seams that run down",
  };
  return titles[kind];
}

/** What is so, then what to do. */
export function adviceText(advice: Advice, names: Names, voice: Voice): string {
  const { trade } = voice;
  switch (advice.kind) {
    case "contrast":
      return contrastText(advice, names, voice);
    case "bleeding":
      return bleedingText(advice.small, voice);
    case "unwashed":
      return unwashedText(advice.bought, advice.where, { names, voice });
    case "weights":
      return weightsText(advice.cloths, voice);
    case "dark-beside-light":
      return `A dark seam allowance shows through pale cloth. Press these seams ${trade.towards} the dark side. Where a step says to press open, trim the dark allowance a little narrower than the pale one.`;
    case "dark-under-top":
      return underTopText(advice.pale, voice);
    case "not-upright":
      return "A print that has an up lies on its side or upside down here. If you would mind, let it change places with a piece that has no up.";
    case "stripes-sideways":
      return "Most stripes run one way, these run the other. If you would rather have them alike, let one of these change places with another piece.";
    case "print-cut-off":
      return "The edge of the top runs through a print that has an up, and what lies outside is cut off after quilting. If you would miss it, keep the piece back for a place further in.";
    case "load-sideways":
      return "Most long seams of this back run from top to bottom, and on a frame their bulk would pile up in one place on the rollers. Load it sideways, and the top with it, so that they lie along the rollers; ask whoever quilts it whether their frame is wide enough.";
  }
}

function underTopText(pale: number | null, { trade, percent }: Voice): string {
  const where =
    pale === null
      ? "Where the top is pale, dark cloth under it"
      : `About ${percent(pale)} of the top is pale in its photo, and “Under the top” in the drawing shows where. Dark cloth below such a part`;
  return `${where} can show through thin or white ${trade.batting}. Lay a dark piece under the top before you sew and look. If it shows, take a thicker ${trade.batting}, or let the piece change places with a paler one.`;
}

type ContrastAdvice = Extract<Advice, { readonly kind: "contrast" }>;

function contrastText({ now, swapped, most, mend }: ContrastAdvice, names: Names, voice: Voice): string {
  const { percent } = voice;
  const is = `The fabrics are told apart easily along ${percent(now)} of the seams between them.`;
  // The same once it is rounded is no gain.
  const swaps =
    percent(swapped) === percent(now)
      ? "Letting equal pieces change places would not help."
      : `Letting equal pieces change places could bring it to ${percent(swapped)}.`;
  const limit =
    percent(most) === percent(swapped) || most >= 0.97
      ? ""
      : ` These pieces can't give more than ${percent(most)}.`;
  const mending =
    mend === null
      ? "One fabric more would change little. If it is too quiet for you, leave out some of the fabrics that are most alike."
      : mendText(mend, names, voice);
  return `${is} ${swaps}${limit} ${mending}`;
}

function mendText({ instead, value, hue, reach, cells, length, width }: Mend, names: Names, voice: Voice) {
  const cloth = `${value} ${hueName(hue, voice)}`;
  const bolt = `${boltText(length, voice)}, ${voice.length(width)} wide`;
  const what = /^[aeiou]/.test(cloth) ? `An ${cloth}` : `A ${cloth}`;
  return instead === "plain"
    ? `${what} cloth in place of ${fabricNameOf("plain", names)} would bring it to ${voice.percent(reach)}; you need as much of it, ${bolt}.`
    : `${what} fabric in place of ${voice.count(cells, "piece", "pieces")} would bring it to ${voice.percent(reach)}; ${bolt}, is enough.`;
}

function hueName(hue: Hue, { trade }: Voice): string {
  return hue === "grey" ? trade.grey : hue;
}

function bleedingText(small: boolean, { trade }: Voice): string {
  const first = `Strong reds and deep ${trade.colours} can run. Press a damp white cloth on a scrap of each; if it takes ${trade.colour},`;
  const then = small
    ? "keep it away from pale cloth or leave it out, as pieces this small ravel in the wash."
    : "wash that fabric before you cut it, as its maker says.";
  return `${first} ${then} Wash the finished quilt with a ${trade.colour} catcher the first time.`;
}

type Said = { readonly names: Names; readonly voice: Voice };

function unwashedText(bought: readonly BeforeWashing[], { pieces }: Where, { names, voice }: Said): string {
  const is = `Washed cloth is sewn to unwashed cloth here. The unwashed may draw in by up to ${voice.percent(0.05)} at its first wash, and the seam puckers.`;
  const ofBought = bought.map(
    ({ fabric, length }) =>
      `Wash ${fabricNameOf(fabric, names)} before you cut it, and buy ${boltText(length, voice)} to allow for that.`,
  );
  const ofPieces =
    pieces.length === 0
      ? []
      : ["Wash large unwashed pieces first as their maker says; press small ones with steam before you cut."];
  return [is, ...ofBought, ...ofPieces].join(" ");
}

function weightsText(cloths: readonly string[], { list }: Voice): string {
  const what =
    cloths.length === 0
      ? "Cloth of different weight is sewn together here."
      : `${sentence(list(cloths))} ${cloths.length === 1 ? "is" : "are"} sewn to cloth of another weight here.`;
  return `${what} Try a seam on two scraps first. Sew with the heavier cloth underneath and a stitch a little longer, and press with the heat that the finer one bears.`;
}

// A hint names a handful of pieces, as the drawing marks them all; what she does at a step she must find at the iron.
const mostNamed = { pieces: 5, units: 12 } as const;

/** Which leftovers it concerns, and at which steps one meets it; null: there is nothing to name. */
export function adviceWhere({ where }: Advice, names: Names, voice: Voice): string | null {
  const pieces = shortList(where.pieces, mostNamed.pieces, (id) => leftoverName(id, names), voice);
  const units = unitsText(where.steps, voice);
  const said = [pieces, units].filter((text) => text !== "");
  return said.length === 0 ? null : `${sentence(said.join("; "))}.`;
}

/** "units 3, 5 and 9". */
function unitsText(steps: readonly string[], voice: Voice): string {
  const [first = ""] = steps;
  if (steps.length < 2) return first === "" ? "" : unitName(first);
  return `units ${shortList(steps, mostNamed.units, (step) => unitName(step).replace(/^unit /, ""), voice)}`;
}

function shortList(ids: readonly string[], most: number, name: (id: string) => string, voice: Voice): string {
  const named = ids.slice(0, most).map(name);
  const more = ids.length - named.length;
  if (named.length === 0) return "";
  return voice.list(more === 0 ? named : [...named, voice.count(more, "other", "others")]);
}

/** On the command line all of it stands together. */
export function adviceLine(advice: Advice, names: Names, voice: Voice): string {
  const where = adviceWhere(advice, names, voice);
  return `${adviceText(advice, names, voice)}${where === null ? "" : ` Where: ${where.charAt(0).toLowerCase()}${where.slice(1)}`}`;
}
