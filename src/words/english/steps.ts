import type { ClothRole, LeftLong } from "../../engine/layout/index.ts";
import {
  fittedIn,
  isMatchedAllAlong,
  type Press,
  type Step,
  type StepPart,
  sidesOf,
  takenSize,
  trimsAfter,
} from "../../engine/sewing/index.ts";
import { isCutToMeasure, isPlainPart, seamless } from "../sewnHow.ts";
import type { Names } from "../types.ts";
import { quoted, type Voice } from "../voice.ts";
import { onePattern, pieceName, roleNames, unitName } from "./names.ts";

/** One step, from what is laid out to what comes off the ironing board. */
export function stepText(step: Step, names: Names, voice: Voice): string {
  const parts = step.from.map((part) => partText(part, names, voice)).join("; ");
  const result = resultText(step, isLast(step, names), voice);
  if (seamless(step)) return `Take ${parts}. ${result}`;
  const seam = `Seam ${voice.length(step.seam)}.`;
  const fitting = fittingText(step, names, voice);
  const sewing = [
    `${howSewn(step, voice)} ${parts}.`,
    ...onPointText(step, voice),
    seam,
    ...pinText(step),
    ...fitting,
  ];
  const after = [pressText(step.press, voice), result];
  return [...(isCutToMeasure(step) ? [measureFirst(step)] : []), ...sewing, ...after].join(" ");
}

/** Plain cloth that is left long is marked to the measure; what isn't is cut to it. */
export function measureFirst({ direction, from }: Step): string {
  const { across } = sidesOf(direction);
  const isLong = (part: StepPart) => part.leftLong?.[across] !== undefined;
  const measure = "Measure the sewn part through the middle and near both edges";
  return from.filter(isPlainPart).every(isLong)
    ? `${measure} and mark the plain cloth to it; do not cut it there yet.`
    : `${measure} before you cut the plain cloth to it.`;
}

/** Where nothing is left long beside a long seam, both edges are shared out before the first stitch. */
export function pinText(step: Step): readonly string[] {
  return isMatchedAllAlong(step) ? ["Pin the ends, the middle and the quarters first."] : [];
}

/** Within a row what is left long is trimmed before the row is closed, or it would push another part out of place. */
export function fittingText(step: Step, names: Names, voice: Voice): readonly string[] {
  const fitted = fittedIn(step);
  if (fitted.length === 0) return [];
  const { along } = sidesOf(step.direction);
  const what = voice.list(fitted.map((part) => partName({ ...part, count: 1 }, names, voice)));
  const length = voice.length(takenSize({ ...step.unfinished, leftLong: step.leftLong })[along]);
  return [`Sew one seam beside ${what} last; trim there first, so that all comes to ${length}.`];
}

/** "1 in wider than needed"; nothing where nothing is left long. */
export function leftLongText({ width, height }: LeftLong, voice: Voice): readonly string[] {
  const wider = width === undefined ? [] : [`${voice.length(width)} wider`];
  const higher = height === undefined ? [] : [`${voice.length(height)} taller`];
  return wider.length + higher.length === 0 ? [] : [`${voice.list([...wider, ...higher])} than needed`];
}

function isLast(step: Step, { steps = [] }: Names): boolean {
  return steps.at(-1)?.id === step.id;
}

function howSewn(step: Step, voice: Voice): string {
  switch (step.kind) {
    case "join":
      return `${joinedAs(step, voice)}, ${orderText(step)}:`;
    case "unit":
      return `Sew ${onePattern(step.pattern ?? "unit")}, its parts turned as the drawing shows, from`;
    case "slab":
      return "Sew a slab by eye, bit to bit, and press as you go:";
  }
}

/** How the plain squares become triangles with straight grain outside, and in what order all is sewn; else nothing. */
export function onPointText({ kind, pattern, from }: Step, voice: Voice): readonly string[] {
  if (kind !== "unit" || pattern !== "on-point") return [];
  const squares = from.filter((part) => "cloth" in part);
  const [least, most] = [Math.min, Math.max].map((pick) => pick(...squares.map(({ width }) => width)));
  const ofSize = (side: number | undefined) => {
    const like = squares.filter(({ width }) => width === side);
    const count = like.reduce((total, part) => total + part.count, 0);
    return `${voice.count(count, "plain square", "plain squares")} of ${like[0] === undefined ? "" : voice.size(like[0])}`;
  };
  return [
    `Cut the ${ofSize(most)} corner to corner both ways for the sides and the ${ofSize(least)} corner to corner once for the ends, so that straight grain lies outside.`,
    "Sew the side triangles to the blocks in slanting rows, the rows to one another, and the end triangles last.",
  ];
}

function joinedAs(step: Step, voice: Voice): string {
  const count = step.from.reduce((total, part) => total + part.count, 0);
  const set = step.pattern === undefined ? "" : ` into ${onePattern(step.pattern)}`;
  return `Sew ${voice.count(count, "part", "parts")} together${set}`;
}

export function orderText({ direction }: Step): string {
  return direction === "beside"
    ? "side by side from left to right"
    : "one below the other from top to bottom";
}

/** One thing that is laid: how many, which, from what, how it lies and how large it is cut. */
export function partText(part: StepPart, names: Names, voice: Voice): string {
  const long = leftLongText(part.leftLong ?? {}, voice);
  const size = [`${voice.size(takenSize(part))}${part.count > 1 ? " each" : ""}`, ...long].join(", ");
  const enough = "piece" in part && isCrumbs(part.piece, names) ? "enough for " : "";
  return `${partName(part, names, voice)}, ${enough}${size}${"piece" in part ? turnText(part) : ""}`;
}

/** The same without its size and how it lies. */
export function partName(part: StepPart, names: Names, voice: Voice): string {
  if ("step" in part) return unitName(part.step);
  if ("cloth" in part) return clothText(part, names, voice);
  if (isCrumbs(part.piece, names)) return leftoverName(part.piece, names);
  return leftoverText(part, names, voice);
}

type LeftoverPart = Extract<StepPart, { readonly piece: string }>;

function leftoverText({ piece, count, copy }: LeftoverPart, names: Names, voice: Voice): string {
  const name = leftoverName(piece, names);
  if (copy === undefined) return count > 1 ? `${voice.number(count)} of ${name}` : name;
  const which = hasSeveral(piece, names) ? `number ${voice.number(copy)} of ${name}` : name;
  return `${count > 1 ? `${voice.number(count)} ` : ""}cut from ${which}`;
}

function hasSeveral(pieceId: string, { pieces }: Names): boolean {
  return (pieces.find(({ id }) => id === pieceId)?.count ?? 1) > 1;
}

function isCrumbs(pieceId: string, { pieces }: Names): boolean {
  return pieces.find(({ id }) => id === pieceId)?.kind === "crumbs";
}

/** "strip 4 (teal)", with her own name for it where she gave one. */
export function leftoverName(pieceId: string, { pieces, fabrics }: Names): string {
  const piece = pieces.find(({ id }) => id === pieceId);
  const fabric = fabrics.find(({ id }) => id === piece?.fabric);
  const said = [fabric?.name ?? "", piece?.name ?? ""].filter((name) => name !== "");
  return said.length === 0 ? pieceName(pieceId) : `${pieceName(pieceId)} (${said.map(plain).join(", ")})`;
}

/** Her own name for a thing, on one line and without signs that do not print. */
function plain(name: string): string {
  return quoted(name).slice(1, -1);
}

function clothText(part: Extract<StepPart, { readonly cloth: string }>, names: Names, voice: Voice): string {
  const many = part.count > 1 ? `${voice.number(part.count)} ` : "";
  const from = part.source === "buy" ? "" : ` from ${sourceText(part.source, names, voice)}`;
  return `${many}${roleOf(part, part.cloth, names)}${from}`;
}

/** "spacer of oat". Plain cloth that she gave no name is plain cloth and nothing more. */
export function roleOf(
  { role, count = 1 }: { readonly role: ClothRole; readonly count?: number },
  fabric: string,
  names: Pick<Names, "fabrics">,
): string {
  const what = count > 1 && role !== "plain" ? `${roleNames[role]}s` : roleNames[role];
  const name = fabricNameOf(fabric, names);
  return role === "plain" && name === roleNames.plain ? what : `${what} of ${name}`;
}

/** On one line. Cloth without a name is plain cloth. */
export function fabricNameOf(fabric: string, { fabrics }: Pick<Names, "fabrics">): string {
  const name = plain(fabrics.find(({ id }) => id === fabric)?.name ?? fabric);
  return name === "" ? roleNames.plain : name;
}

type Source = { readonly piece: string; readonly copy: number };

/** The length it is cut from; which one, where she has several alike. */
function sourceText({ piece, copy }: Source, names: Names, voice: Voice): string {
  return hasSeveral(piece, names) ? `${pieceName(piece)}, number ${voice.number(copy)}` : pieceName(piece);
}

const quarterTurns = {
  0: "",
  1: ", a quarter turn to the right",
  2: ", upside down",
  3: ", a quarter turn to the left",
} as const;

export function turnText({ turned, quarter = 0 }: LeftoverPart): string {
  return `${turned === true ? ", turned on its side" : ""}${quarterTurns[quarter]}`;
}

export function pressText(press: Press, { trade }: Voice): string {
  switch (press) {
    case "open":
      return "Press the seams open.";
    case "to-one-side":
      return "Press the seams to one side.";
    case "to-the-plain":
      return `Press the seams ${trade.towards} the plain cloth.`;
    case "away-from-centre":
      return `Press the seams away from the ${trade.centre}.`;
  }
}

export function resultText(step: Step, last: boolean, voice: Voice): string {
  const { squareUp, unfinished, finished, leftLong } = step;
  const shows = last ? "this is the back" : `it shows ${voice.size(finished)} once it is sewn in`;
  const size = squareUp ?? takenSize({ ...unfinished, leftLong });
  const sized = [voice.size(size), ...leftLongText(leftLong ?? {}, voice)].join(", ");
  if (squareUp === undefined) return `It measures ${sized}; ${shows}.`;
  const trim = trimsAfter(step) ? "Trim what stands over and square it up" : "Square it up";
  return `${trim} to ${sized}; ${shows}.`;
}
