import type { ClothRole, LeftLong } from "../engine/layout/index.ts";
import {
  fittedIn,
  isMatchedAllAlong,
  type Press,
  type Step,
  type StepPart,
  sidesOf,
  takenSize,
  trimsAfter,
} from "../engine/sewing/index.ts";
import { isPlainPart, type Names, type Voice } from "../words/index.ts";
import { ownWords } from "./measures.ts";
import { pieceName, roleNames, unitName } from "./names.ts";

/** Plain cloth that is left long is marked to the measure; what isn't is cut to it. */
export function measureFirst({ direction, from }: Step): string {
  const { across } = sidesOf(direction);
  const isLong = (part: StepPart) => part.leftLong?.[across] !== undefined;
  const measure = "Miss das genähte Teil durch die Mitte und nahe an beiden Kanten";
  return from.filter(isPlainPart).every(isLong)
    ? `${measure}, und zeichne das Maß auf dem Grundstoff an; schneide dort noch nicht.`
    : `${measure}, bevor du den Grundstoff danach zuschneidest.`;
}

export function pinText(step: Step): readonly string[] {
  return isMatchedAllAlong(step) ? ["Steck zuerst die Enden, die Mitte und die Viertel."] : [];
}

/** Within a row what is left long is trimmed before the row is closed, or it would push another part out of place. */
export function fittingText(step: Step, names: Names, voice: Voice): readonly string[] {
  const fitted = fittedIn(step);
  if (fitted.length === 0) return [];
  const { along } = sidesOf(step.direction);
  const what = voice.list(fitted.map((part) => partName({ ...part, count: 1 }, names, voice)));
  const length = voice.length(takenSize({ ...step.unfinished, leftLong: step.leftLong })[along]);
  return [
    `Eine Naht neben ${what} nähst du zuletzt; schneide dort vorher zu, damit alles zusammen ${length} ergibt.`,
  ];
}

/** "2,5 cm breiter als nötig"; nothing where nothing is left long. */
export function leftLongText({ width, height }: LeftLong, voice: Voice): readonly string[] {
  const wider = width === undefined ? [] : [`${voice.length(width)} breiter`];
  const higher = height === undefined ? [] : [`${voice.length(height)} höher`];
  return wider.length + higher.length === 0 ? [] : [`${voice.list([...wider, ...higher])} als nötig`];
}

/** How the plain squares become triangles with straight grain outside, and in what order all is sewn; else nothing. */
export function onPointText({ kind, pattern, from }: Step, voice: Voice): readonly string[] {
  if (kind !== "unit" || pattern !== "on-point") return [];
  const squares = from.filter((part) => "cloth" in part);
  const [least, most] = [Math.min, Math.max].map((pick) => pick(...squares.map(({ width }) => width)));
  const ofSize = (side: number | undefined) => {
    const like = squares.filter(({ width }) => width === side);
    const count = like.reduce((total, part) => total + part.count, 0);
    return `${voice.count(count, "Quadrat", "Quadrate")} aus Grundstoff zu ${like[0] === undefined ? "" : voice.size(like[0])}`;
  };
  return [
    `Schneide für die Seiten ${ofSize(most)} über beide Diagonalen und für die Enden ${ofSize(least)} über eine Diagonale, damit außen gerader Fadenlauf liegt.`,
    "Näh die Seitendreiecke in schrägen Reihen an die Blöcke, die Reihen aneinander und die Enddreiecke zuletzt.",
  ];
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
  const many = count > 1 ? `${voice.number(count)}-mal ` : "";
  if (copy === undefined) return `${many}${name}`;
  const which = hasSeveral(piece, names) ? `${name}, Nummer ${voice.number(copy)}` : name;
  return `${many}zugeschnitten aus ${which}`;
}

function hasSeveral(pieceId: string, { pieces }: Names): boolean {
  return (pieces.find(({ id }) => id === pieceId)?.count ?? 1) > 1;
}

function isCrumbs(pieceId: string, { pieces }: Names): boolean {
  return pieces.find(({ id }) => id === pieceId)?.kind === "crumbs";
}

/** "Streifen 4 (petrol)", with her own name for it where she gave one. */
export function leftoverName(pieceId: string, { pieces, fabrics }: Names): string {
  const piece = pieces.find(({ id }) => id === pieceId);
  const fabric = fabrics.find(({ id }) => id === piece?.fabric);
  const said = [fabric?.name ?? "", piece?.name ?? ""].filter((name) => name !== "");
  return said.length === 0 ? pieceName(pieceId) : `${pieceName(pieceId)} (${said.map(ownWords).join(", ")})`;
}

function clothText(part: Extract<StepPart, { readonly cloth: string }>, names: Names, voice: Voice): string {
  const many = part.count > 1 ? `${voice.number(part.count)}-mal ` : "";
  const from = part.source === "buy" ? "" : ` aus ${sourceText(part.source, names, voice)}`;
  return `${many}${roleOf(part, part.cloth, names)}${from}`;
}

/** "Zwischenstreifen (hafer)". Plain cloth that she gave no name is plain cloth and nothing more. */
export function roleOf(
  { role }: { readonly role: ClothRole },
  fabric: string,
  names: Pick<Names, "fabrics">,
): string {
  const name = fabricNameOf(fabric, names);
  return name === roleNames.plain ? roleNames[role] : `${roleNames[role]} (${name})`;
}

/** On one line. Cloth without a name is plain cloth. */
export function fabricNameOf(fabric: string, { fabrics }: Pick<Names, "fabrics">): string {
  const name = ownWords(fabrics.find(({ id }) => id === fabric)?.name ?? fabric);
  return name === "" || name === "plain" ? roleNames.plain : name;
}

type Source = { readonly piece: string; readonly copy: number };

/** The length it is cut from; which one, where she has several alike. */
function sourceText({ piece, copy }: Source, names: Names, voice: Voice): string {
  return hasSeveral(piece, names) ? `${pieceName(piece)}, Nummer ${voice.number(copy)}` : pieceName(piece);
}

const quarterTurns = {
  0: "",
  1: ", eine Vierteldrehung nach rechts",
  2: ", auf dem Kopf",
  3: ", eine Vierteldrehung nach links",
} as const;

export function turnText({ turned, quarter = 0 }: LeftoverPart): string {
  return `${turned === true ? ", auf die Seite gedreht" : ""}${quarterTurns[quarter]}`;
}

export function pressText(press: Press): string {
  switch (press) {
    case "open":
      return "Bügle die Nahtzugaben auseinander.";
    case "to-one-side":
      return "Bügle die Nahtzugaben zu einer Seite.";
    case "to-the-plain":
      return "Bügle die Nahtzugaben zum Grundstoff hin.";
    case "away-from-centre":
      return "Bügle die Nahtzugaben von der Mitte weg.";
  }
}

export function resultText(step: Step, last: boolean, voice: Voice): string {
  const { squareUp, unfinished, finished, leftLong } = step;
  const shows = last ? "das ist die Rückseite" : `eingenäht sieht man ${voice.size(finished)} davon`;
  const size = squareUp ?? takenSize({ ...unfinished, leftLong });
  const sized = [voice.size(size), ...leftLongText(leftLong ?? {}, voice)].join(", ");
  if (squareUp === undefined) return `Es misst ${sized}; ${shows}.`;
  const trim = trimsAfter(step)
    ? "Schneide ab, was übersteht, und schneide es rechtwinklig"
    : "Schneide es rechtwinklig";
  return `${trim} auf ${sized} zu; ${shows}.`;
}
