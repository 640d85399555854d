/** What the page says on which the size of the back is found. */
import type { Backing, CutOffEdge } from "../engine/back/index.ts";
import type { DraftProblem, Method, Time } from "../engine/cloth/index.ts";
import type { DisplayUnit, Length, LengthProblem, Size } from "../engine/length/index.ts";
import { draftProblem } from "./english/draftProblems.ts";
import { lengthProblem } from "./english/lengthProblems.ts";
import { methodName, timeNames } from "./english/names.ts";
import type { Locale } from "./locales.ts";
import { boltText, unitNames } from "./measures.ts";
import { quoted, sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

export const sides = ["width", "height"] as const;
type Side = (typeof sides)[number];

/** How a back is cut from one cloth. */
export type OneCloth = {
  readonly clothWidth: Length;
  readonly vertical: Backing;
  readonly horizontal: Backing;
  /** `null`: the back is wider than that cloth both ways. */
  readonly wide: { readonly width: Length; readonly buy: Length } | null;
};

export type SizeTexts = {
  readonly title: string;
  readonly nameOfBack: string;

  readonly from: string;
  readonly fromTop: string;
  readonly fromBack: string;

  readonly top: string;
  readonly measureThrice: string;
  readonly widths: string;
  readonly heights: string;
  /** Where the three measures are taken. */
  readonly places: { readonly [S in Side]: readonly [string, string, string] };
  /** For who can't see the row a field stands in: "Width at the upper edge". */
  readonly measureOf: (side: Side, place: 0 | 1 | 2) => string;
  readonly differ: (side: Side, by: Length) => string;

  readonly method: string;
  readonly methods: (method: Method) => string;
  readonly methodTakes: (extra: Length) => string;
  readonly extra: string;
  readonly extraUsual: (extra: Length) => string;
  readonly extraAsked: string;

  readonly asks: string;
  readonly asksWhat: string;
  readonly asksExtra: string;
  readonly asksWidth: string;
  readonly asksHeight: string;
  readonly ownSize: string;
  readonly ownWidth: string;
  readonly ownHeight: string;

  readonly unit: string;
  readonly units: { readonly [U in DisplayUnit]: string };
  readonly time: string;
  readonly times: (time: Time) => string;
  readonly timeWhat: (time: Time) => string;

  readonly back: string;
  /** How long a side is, beside it. */
  readonly side: (length: Length) => string;
  readonly backIs: (back: Size) => string;
  readonly cutOffIs: (edge: CutOffEdge) => string;
  readonly notMeasured: string;
  readonly topOnDrawing: (top: Size) => string;

  readonly cloth: string;
  readonly clothName: string;
  readonly clothColour: string;
  readonly clothWhat: string;
  readonly clothWidth: string;
  readonly clothWidthUsual: (width: Length) => string;
  readonly oneCloth: string;
  readonly backings: (cloth: OneCloth) => readonly string[];

  readonly goOn: string;
  /** What the keys for fractions are called. */
  readonly eighths: string;
  readonly problem: (problem: LengthProblem) => string;
  /** What keeps the back from being made, or is worth knowing. */
  readonly jobProblem: (problem: DraftProblem) => string;
  /** One of two readings, on a button. */
  readonly meant: (reading: string) => string;
};

export function sizeTexts(locale: Locale, unit: DisplayUnit): SizeTexts {
  return inWordSet(locale, unit, { name: "size", english });
}

function english(voice: Voice): SizeTexts {
  return {
    title: "Size",
    nameOfBack: "Name of this back",

    from: "What you start from",
    fromTop: "The top",
    fromBack: "The size of the back",

    top: "The top",
    measureThrice:
      "Measure three times each way: the largest counts, so that the back is never short. One measure is enough to begin.",
    widths: "Width",
    heights: "Height",
    places,
    measureOf: (side, place) =>
      `${side === "width" ? "Width" : "Height"}, ${places[side][place].toLowerCase()}`,
    differ: (side, by) =>
      `The ${side === "width" ? "widths" : "heights"} differ by ${voice.length(by)}. The back is made for the largest.`,

    ...methodTexts(voice),

    unit: "Unit",
    units: unitNames(voice),
    time: "Time you will give it",
    times: (time) => sentence(timeNames[time]),
    timeWhat: (time) => timeWhats[time],

    back: "The back",
    side: voice.length,
    backIs: (back) => `${voice.size(back)}, from raw edge to raw edge.`,
    cutOffIs: (edge) => cutOffText(edge, voice),
    notMeasured: "Give the size of the top, and the back is drawn here.",
    topOnDrawing: (top) => `the top, ${voice.size(top)}`,

    ...clothTexts(voice),

    goOn: "Go on to your leftovers",
    eighths: "Eighths of an inch",
    jobProblem: (problem) => draftProblem(problem, voice),
    problem: (problem) =>
      isTwoSides(problem.text) ? twoSidesText(problem.text) : sentence(lengthProblem(problem)),
    meant: (reading) => `It is ${reading}`,
  };
}

/** `52 x 60` in the place of one side. */
function isTwoSides(text: string): boolean {
  return /\d.*(?:[x×]|\bby\b).*\d/i.test(text);
}

function twoSidesText(text: string): string {
  return `${quoted(text)} is two sides. Write one of them here, and the other in its own place.`;
}

const places: SizeTexts["places"] = {
  width: ["Upper edge", "Middle", "Lower edge"],
  height: ["Left edge", "Middle", "Right edge"],
};

const timeWhats: { readonly [T in Time]: string } = {
  afternoon: "Few seams, much plain cloth.",
  weekend: "A good part pieced.",
  any: "As much of it pieced as your leftovers give.",
};

function methodTexts(voice: Voice) {
  return {
    method: "How it will be quilted",
    methods: (method: Method) => sentence(methodName(method, voice)),
    methodTakes: (extra: Length) => `${voice.length(extra)} more on each side.`,
    extra: "Extra on each side",
    extraUsual: (extra: Length) => `Left empty it is ${voice.length(extra)}, as is usual.`,
    extraAsked: "Your quilter asks for her own extra, so this one is left alone.",

    asks: "Your quilter asks for something else",
    asksWhat: "Every shop and machine differs. What stands here goes before all else.",
    asksExtra: "Extra on each side",
    asksWidth: "Width, at least",
    asksHeight: "Height, at least",
    ownSize: "Or make the back exactly so large",
    ownWidth: "Width of the back",
    ownHeight: "Height of the back",
  };
}

function clothTexts(voice: Voice) {
  const { colour } = voice.trade;
  return {
    cloth: "Plain cloth you would buy",
    clothName: "Its name",
    clothColour: `Its ${colour}`,
    clothWhat: "It fills what the leftovers do not cover.",
    clothWidth: "Usable width",
    clothWidthUsual: (width: Length) =>
      `Between the ${voice.trade.selvage}s. Left empty it is ${voice.length(width)}.`,
    oneCloth: "All of one cloth, for comparison",
    backings: (cloth: OneCloth) => backingTexts(cloth, voice),
  };
}

function cutOffText({ width, height }: CutOffEdge, voice: Voice): string {
  const rest = "is cut away after quilting. Keep small and precious pieces out of it.";
  if (width === height) return `${voice.length(width)} on each side ${rest}`;
  return `${voice.length(width)} at the left and right, ${voice.length(height)} at the top and bottom ${rest}`;
}

function backingTexts({ clothWidth, vertical, horizontal, wide }: OneCloth, voice: Voice): readonly string[] {
  const wideText =
    wide === null
      ? "Extra-wide cloth is too narrow for this back in one piece."
      : `Extra-wide cloth, ${voice.length(wide.width)}, no seam: ${boltText(wide.buy, voice)}.`;
  const ways =
    vertical.widths === 1 || horizontal.widths === 1
      ? [leastOf(vertical, horizontal)]
      : [vertical, horizontal];
  return [...ways.map((backing) => backingText(backing, clothWidth, voice)), wideText];
}

function leastOf(one: Backing, other: Backing): Backing {
  return other.buy < one.buy ? other : one;
}

function backingText({ seams, widths, each, buy }: Backing, clothWidth: Length, voice: Voice): string {
  const how = widths === 1 ? "no seam" : seams === "vertical" ? "seams running down" : "seams running across";
  const lengths = `${voice.count(widths, "length", "lengths")} of ${voice.length(each)}`;
  return `Cloth ${voice.length(clothWidth)} wide, ${how}: ${lengths}, ${boltText(buy, voice)} in all.`;
}
