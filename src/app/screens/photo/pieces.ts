/** The pieces that photos showed, as they lie on the page before any of them enters the list. */
import { hexOf, type Kind, type Lab } from "../../../engine/cloth/index.ts";
import {
  type DisplayUnit,
  fromNumber,
  type Length,
  length,
  type Size,
  times,
} from "../../../engine/length/index.ts";
import {
  leftoverOf,
  lengthAsMeasured,
  type Measured,
  type NewLeftover,
  type Project,
} from "../../../files/index.ts";
import { type Doubt, isInside, isOneCloth, type MeasuredPiece, type Place } from "../../../photo/index.ts";

export type TablePiece = {
  readonly id: string;
  /** The photo it lies in, and what it is called by on the page, of whatever photo the others are. */
  readonly photo: string;
  readonly number: number;
  readonly seen: MeasuredPiece;
  /** An address of its picture. */
  readonly cutOut: string;
  readonly kind: Kind;
  readonly width: Measured<Length> | null;
  readonly height: Measured<Length> | null;
  /** How many alike, as she typed it. */
  readonly count: string;
  /** It lies folded in half across its longer side. */
  readonly isFolded: boolean;
  readonly cloth: string;
  readonly isTaken: boolean;
};

export type TableCloth = {
  readonly id: string;
  /** Empty until she gives it one. */
  readonly name: string;
  /** What it is called without one. */
  readonly number: number;
  readonly colour: string;
};

export type Laid = { readonly pieces: readonly TablePiece[]; readonly cloths: readonly TableCloth[] };
export const nothingLaid: Laid = { pieces: [], cloths: [] };

/** What was found in one photo. */
export type FoundHere = {
  readonly photo: string;
  readonly unit: DisplayUnit;
  readonly pieces: readonly Shown[];
  /** Numbers up to this are those of pieces that she may take back. */
  readonly taken?: number;
  /** A name that no other piece and no other cloth has. */
  readonly newId: () => string;
};

/** With the pieces of one more photo; those of one cloth lie together, of whatever photo they are. */
export function withFound(laid: Laid, { photo, unit, pieces, newId, taken = 0 }: FoundHere): Laid {
  const last = Math.max(taken, lastNumber(laid));
  return pieces.reduce((now, { piece, cutOut }, index) => {
    const { cloths, cloth } = withClothFor(now, piece, newId);
    const one: TablePiece = {
      id: newId(),
      photo,
      number: last + index + 1,
      seen: piece,
      cutOut,
      ...asSeen(piece, unit),
      count: "1",
      cloth,
      isTaken: isSure(piece.check),
    };
    return { cloths, pieces: [...now.pieces, one] };
  }, laid);
}

export function lastNumber({ pieces }: Laid): number {
  return Math.max(0, ...pieces.map(({ number }) => number));
}

/** What a photo shows once she has said where its floor lies bare, in place of what it showed; the heap keeps its own. */
export function withFoundAgain(laid: Laid, old: readonly string[], found: FoundHere): Laid {
  const rest = { ...laid, pieces: laid.pieces.filter(({ id }) => !old.includes(id)) };
  const entered = rest.pieces.filter(({ photo }) => photo === found.photo);
  const isEntered = ({ piece }: Shown) =>
    entered.some(({ seen }) => isInside(seen.pixels, middleOf(piece.pixels)));
  return withFound(rest, { ...found, pieces: found.pieces.filter((one) => !isEntered(one)) });
}

function middleOf(pixels: readonly Place[]): Place {
  const mean = (axis: 0 | 1) => pixels.reduce((sum, place) => sum + place[axis], 0) / pixels.length;
  return [mean(0), mean(1)];
}

/** A piece whose outline she has put right: seen anew, and sure. */
export function withSeen(laid: Laid, id: string, { piece, cutOut }: Shown, unit: DisplayUnit): Laid {
  const pieces = laid.pieces.map((one) =>
    one.id === id ? { ...one, seen: piece, cutOut, ...asSeen(piece, unit), isTaken: true } : one,
  );
  return { ...laid, pieces };
}

/** What she has made of some pieces, or found where there was none, in their place; of the first one's cloth. */
export function withInstead(
  laid: Laid,
  old: readonly string[],
  { photo, unit, pieces, newId }: FoundHere,
): Laid {
  const first = laid.pieces.find(({ id }) => id === old[0]);
  const last = lastNumber(laid);
  const rest = { ...laid, pieces: laid.pieces.filter(({ id }) => !old.includes(id)) };
  return pieces.reduce((now, { piece, cutOut }, index) => {
    const { cloths, cloth } =
      first === undefined ? withClothFor(now, piece, newId) : { cloths: now.cloths, cloth: first.cloth };
    const number =
      index === 0 && first !== undefined ? first.number : last + index + (first === undefined ? 1 : 0);
    const own = { id: newId(), photo, number, seen: piece, cutOut, ...asSeen(piece, unit) };
    return { cloths, pieces: [...now.pieces, { ...own, count: "1", cloth, isTaken: true }] };
  }, rest);
}

type Shown = { readonly piece: MeasuredPiece; readonly cutOut: string };

/** Its kind and size, as the photo tells them. */
export function asSeen(
  { kind, width, height }: MeasuredPiece,
  unit: DisplayUnit,
): Pick<TablePiece, "kind" | "width" | "height" | "isFolded"> {
  return { kind, width: measuredOf(width, unit), height: measuredOf(height, unit), isFolded: false };
}

function measuredOf(inches: number, unit: DisplayUnit): Measured<Length> | null {
  const size = fromNumber(inches, "in");
  return size === null || size <= 0 ? null : lengthAsMeasured(size, unit);
}

// What holds of the whole photo is said there, once.
const ofWholePhoto: readonly Doubt[] = ["one-sheet", "curled-card"];

/** Nothing speaks against it that she could see by looking at this piece. */
export function isSure(check: readonly Doubt[]): boolean {
  return ownDoubts(check).length === 0;
}

export function ownDoubts(check: readonly Doubt[]): readonly Doubt[] {
  return check.filter((doubt) => !ofWholePhoto.includes(doubt));
}

function withClothFor({ pieces, cloths }: Laid, piece: MeasuredPiece, newId: () => string) {
  const like = pieces.find(({ seen }) => isOneCloth(seen, piece));
  if (like !== undefined) return { cloths, cloth: like.cloth };
  const own = clothOf(piece, cloths, newId());
  return { cloths: [...cloths, own], cloth: own.id };
}

function clothOf(piece: MeasuredPiece, cloths: readonly TableCloth[], id: string): TableCloth {
  const number = cloths.reduce((most, cloth) => Math.max(most, cloth.number), 0) + 1;
  return { id, name: "", number, colour: hexOf(meanOf(piece.colours)) };
}

/** What one sees of it from afar. */
function meanOf(colours: MeasuredPiece["colours"]): Lab {
  const all = colours.reduce((sum, { share }) => sum + share, 0) || 1;
  const mean = (channel: keyof Lab) =>
    colours.reduce((sum, { lab, share }) => sum + lab[channel] * share, 0) / all;
  return { l: mean("l"), a: mean("a"), b: mean("b") };
}

export type PieceChange = Partial<
  Pick<TablePiece, "kind" | "width" | "height" | "count" | "isTaken" | "cloth">
>;

export function withChange(laid: Laid, id: string, change: PieceChange): Laid {
  return {
    ...laid,
    pieces: laid.pieces.map((piece) => (piece.id === id ? { ...piece, ...change } : piece)),
  };
}

/** Folded in half it is twice as long as the photo shows it. */
export function withFold(laid: Laid, id: string, isFolded: boolean): Laid {
  const pieces = laid.pieces.map((piece) => {
    if (piece.id !== id || piece.isFolded === isFolded) return piece;
    const side = (piece.height?.value ?? 0) >= (piece.width?.value ?? 0) ? "height" : "width";
    const now = piece[side];
    if (now?.value == null) return { ...piece, isFolded };
    const long = isFolded ? times(now.value, 2) : length(Math.floor(now.value / 2));
    return { ...piece, isFolded, [side]: lengthAsMeasured(long, now.unit) };
  });
  return { ...laid, pieces };
}

export function withoutPiece(laid: Laid, id: string): Laid {
  return { ...laid, pieces: laid.pieces.filter((piece) => piece.id !== id) };
}

/** To a cloth of its own. */
export function withOwnCloth(laid: Laid, id: string, newId: string): Laid {
  const piece = laid.pieces.find((one) => one.id === id);
  if (piece === undefined) return laid;
  const own = clothOf(piece.seen, laid.cloths, newId);
  return withChange({ ...laid, cloths: [...laid.cloths, own] }, id, { cloth: own.id });
}

export function withName(laid: Laid, cloth: string, name: string): Laid {
  return { ...laid, cloths: laid.cloths.map((one) => (one.id === cloth ? { ...one, name } : one)) };
}

export function withTaken(laid: Laid, isTaken: boolean): Laid {
  return { ...laid, pieces: laid.pieces.map((piece) => ({ ...piece, isTaken })) };
}

export function countOf({ count }: TablePiece): number | null {
  return /^\s*[1-9]\d{0,3}\s*$/.test(count) ? Number(count) : null;
}

/** Its size where it can be read. A square is known by one side. */
export function sizeOf({ kind, width, height }: TablePiece): Size | null {
  const one = width?.value ?? null;
  const other = hasOneSide(kind) ? one : (height?.value ?? null);
  return one === null || other === null || one <= 0 || other <= 0 ? null : { width: one, height: other };
}

export function hasOneSide(kind: Kind): boolean {
  return kind === "square" || kind === "half-square-triangle";
}

/** Ticked, and all that is needed of it is there. */
export function isReady(piece: TablePiece): boolean {
  return piece.isTaken && sizeOf(piece) !== null && countOf(piece) !== null;
}

export type Entering = {
  readonly unit: DisplayUnit;
  /** What a cloth is called, also without a name of hers. */
  readonly nameOf: (cloth: TableCloth) => string;
  readonly project: Pick<Project, "leftovers">;
};

/** A row for the heap, and the pieces that it stands for: alike in kind, size and cloth. */
export type NewRow = {
  readonly row: NewLeftover;
  readonly pieces: readonly string[];
  readonly count: number;
  /** The address of one of their pictures. */
  readonly cutOut: string;
};

export function rowsOf({ pieces, cloths }: Laid, { unit, nameOf, project }: Entering): readonly NewRow[] {
  const rows = new Map<string, TablePiece[]>();
  for (const piece of pieces.filter(isReady)) {
    const size = sizeOf(piece);
    const key = `${piece.cloth} ${piece.kind} ${size?.width} ${size?.height}`;
    rows.set(key, [...(rows.get(key) ?? []), piece]);
  }
  return [...rows.values()].flatMap((alike) => {
    const [first] = alike;
    const size = first === undefined ? null : sizeOf(first);
    const cloth = cloths.find(({ id }) => id === first?.cloth);
    if (first === undefined || size === null || cloth === undefined) return [];
    const count = alike.reduce((sum, piece) => sum + (countOf(piece) ?? 0), 0);
    const fabric = nameOf(cloth);
    const colour = hasColour(project, fabric) ? {} : { colour: cloth.colour };
    const row = leftoverOf({ kind: first.kind, ...size, count, fabric, ...colour }, unit);
    return [{ row, pieces: alike.map(({ id }) => id), count, cutOut: first.cutOut }];
  });
}

/** A fabric that has a color in the heap keeps it. */
function hasColour({ leftovers }: Pick<Project, "leftovers">, fabric: string): boolean {
  return leftovers.some(
    ({ cells }) => cells.colour !== undefined && nameKey(cells.fabric?.text ?? "") === nameKey(fabric),
  );
}

export function nameKey(fabric: string): string {
  return fabric.trim().replace(/\s+/gu, " ").toLowerCase();
}
