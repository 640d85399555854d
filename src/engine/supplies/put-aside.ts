import { type DraftPiece, type Kind, kindFromSides, readColour } from "../cloth/index.ts";
import { inches, type Length, larger, length, type Size, smaller, sum, times } from "../length/index.ts";
import { type BindingChoice, bindingFor, usualBinding } from "./binding.ts";

/** Cloth that is put aside: so many pieces of this size, out of a row of the heap. */
export type AsideCloth = Size & {
  readonly row: number;
  readonly count: number;
  readonly fabric: string;
};

export type Aside = {
  /** Empty: nothing in the heap is enough. */
  readonly from: readonly AsideCloth[];
  /** What is missing; null: nothing is. Then all of `from` is put aside. */
  readonly short: Length | null;
};

export type BindingAside = Aside & { readonly needed: Length; readonly stripWidth: Length };

export type Wants = {
  /** The quilt that is bound; null: not this time, or its size isn't known. */
  readonly binding: Size | null;
  readonly label: boolean;
};

export type PutAside = {
  /** The heap without it. A row of which nothing is left is gone; the others keep their numbers. */
  readonly pieces: readonly DraftPiece[];
  readonly binding: BindingAside | null;
  readonly label: Aside | null;
};

/**
 * Takes what binding and label need out of the heap before the back is planned. Binding comes of one fabric where one
 * is enough, then of a length, then of strips of several. Where the whole heap isn't enough for it, nothing is taken.
 */
export function putAside(pieces: readonly DraftPiece[], wants: Wants): PutAside {
  const binding = wants.binding === null ? null : bindingAside(pieces, wants.binding);
  const bound = binding === null ? pieces : without(pieces, binding.from);
  const label = wants.label ? labelAside(bound) : null;
  return { pieces: label === null ? bound : without(bound, label.from), binding, label };
}

type Sized = DraftPiece & { readonly width: Length; readonly height: Length; readonly kind: Kind };

/** Rows of a known size that she has not meant for something else. */
function freePieces(pieces: readonly DraftPiece[]): readonly Sized[] {
  return pieces.flatMap((piece) => {
    const { width, height, use = "yes" } = piece;
    if (width === undefined || height === undefined || width <= 0 || height <= 0) return [];
    if (use === "keep-back" || use === "give-away" || use === "must") return [];
    return [{ ...piece, width, height, kind: piece.kind ?? kindFromSides(width, height) }];
  });
}

function bindingAside(pieces: readonly DraftPiece[], quilt: Size): BindingAside {
  const choice = usualBinding;
  const needed = bindingFor(quilt, choice).length;
  const free = freePieces(pieces);
  const strips = stripsFor(free, choice);
  const ways = [...ofOneFabric(strips), ...lengthsFor(free, needed, choice).map((one) => [one]), strips];
  const found = ways.map((way) => enoughOf(way, needed, choice)).find((way) => way !== null) ?? null;
  const short = found === null ? missing([strips, ...ways], needed, choice) : null;
  return { from: found ?? [], short, needed, stripWidth: choice.stripWidth };
}

/** Wider ones are trimmed, at most by an inch: beyond that the cloth is worth more. From memory. */
const mostTrimmed = inches(1);
/** Every join is a lump under the binding: shorter strips aren't bound with. From memory. */
const shortestStrip = inches(12);

type Strips = AsideCloth;

/** Strips of a fitting width, the least trimmed first and then the longest. */
function stripsFor(free: readonly Sized[], { stripWidth }: BindingChoice): readonly Strips[] {
  return free
    .filter((piece) => piece.kind === "strip")
    .filter((piece) => {
      const short = smaller(piece.width, piece.height);
      return short >= stripWidth && short <= stripWidth + mostTrimmed && longSide(piece) >= shortestStrip;
    })
    .map(asCloth)
    .sort((one, other) => shortSide(one) - shortSide(other) || longSide(other) - longSide(one));
}

function asCloth({ row, width, height, count = 1, fabric = "" }: Sized): AsideCloth {
  return { row, width, height, count, fabric };
}

function longSide({ width, height }: Size): Length {
  return larger(width, height);
}

function shortSide({ width, height }: Size): Length {
  return smaller(width, height);
}

function ofOneFabric(strips: readonly Strips[]): readonly (readonly Strips[])[] {
  const fabrics = new Set(strips.map(({ fabric }) => fabric.toLowerCase()));
  fabrics.delete("");
  return [...fabrics].map((name) => strips.filter(({ fabric }) => fabric.toLowerCase() === name));
}

/** Strips cut across each length, as many as are needed; the shortest length that gives them first. */
function lengthsFor(free: readonly Sized[], needed: Length, choice: BindingChoice): readonly Strips[] {
  return free
    .filter(
      (piece) => piece.kind === "length" && (piece.count ?? 1) === 1 && shortSide(piece) >= shortestStrip,
    )
    .flatMap((piece) => {
      const cut = { ...choice, clothWidth: shortSide(piece) };
      const count = Math.ceil((needed - cut.stripWidth) / (cut.clothWidth - cut.stripWidth));
      const isEnough = times(cut.stripWidth, count) <= longSide(piece);
      return isEnough ? [acrossLength(piece, count, cut)] : [];
    })
    .sort((one, other) => longSide(one) - longSide(other));
}

function acrossLength(piece: Sized, count: number, { stripWidth, clothWidth }: BindingChoice): Strips {
  const lies = piece.width < piece.height;
  const size = lies ? { width: clothWidth, height: stripWidth } : { width: stripWidth, height: clothWidth };
  return { ...asCloth(piece), ...size, count };
}

/** As many of these as are needed, in their order; null: they aren't enough. */
function enoughOf(
  strips: readonly Strips[],
  needed: Length,
  choice: BindingChoice,
): readonly AsideCloth[] | null {
  const taken: AsideCloth[] = [];
  let left: number = needed;
  for (const strip of strips) {
    if (left <= 0) break;
    // Joined on the diagonal each costs its width; the first has no join before it.
    const joined = longSide(strip) - choice.stripWidth;
    const wanted = Math.ceil((left - (taken.length === 0 ? choice.stripWidth : 0)) / joined);
    const count = Math.min(strip.count, Math.max(1, wanted));
    left -= count * joined + (taken.length === 0 ? choice.stripWidth : 0);
    taken.push({ ...strip, count });
  }
  return left <= 0 ? taken : null;
}

function missing(ways: readonly (readonly Strips[])[], needed: Length, choice: BindingChoice): Length {
  const most = Math.max(0, ...ways.map((way) => joinedLength(way, choice)));
  return length(Math.max(0, needed - most));
}

function joinedLength(strips: readonly Strips[], { stripWidth }: BindingChoice): number {
  const joined = sum(strips.map((strip) => times(length(longSide(strip) - stripWidth), strip.count)));
  return strips.length === 0 ? 0 : joined + stripWidth;
}

/** Room for a name, a date and a few words. From memory. */
const labelSize: Size = { width: inches(7), height: inches(5) };
/** Ink shows on light cloth. From memory. */
const lightFrom = 65;

/** The smallest plain piece a label fits on, light ones before those of an unknown colour. */
function labelAside(pieces: readonly DraftPiece[]): Aside {
  const fitting = freePieces(pieces)
    .filter(({ kind }) => kind === "square" || kind === "rectangle")
    .filter((piece) => longSide(piece) >= labelSize.width && shortSide(piece) >= labelSize.height)
    .map((piece) => ({ piece, value: valueOfPiece(piece) }))
    .filter(({ value }) => value === null || value >= lightFrom)
    .sort(
      (one, other) =>
        Number(one.value === null) - Number(other.value === null) || sizeOrder(one.piece, other.piece),
    );
  const [best] = fitting;
  return { from: best === undefined ? [] : [{ ...asCloth(best.piece), count: 1 }], short: null };
}

function valueOfPiece({ colour }: DraftPiece): number | null {
  return colour === undefined ? null : (readColour(colour)?.lab.l ?? null);
}

function sizeOrder(one: Sized, other: Sized): number {
  return one.width * one.height - other.width * other.height;
}

function without(pieces: readonly DraftPiece[], taken: readonly AsideCloth[]): readonly DraftPiece[] {
  return taken.reduce((rest, cloth) => rest.flatMap((piece) => withoutCloth(piece, cloth)), pieces);
}

function withoutCloth(piece: DraftPiece, cloth: AsideCloth): readonly DraftPiece[] {
  const { row, width, height, count = 1 } = piece;
  if (row !== cloth.row || width === undefined || height === undefined) return [piece];
  if (width === cloth.width && height === cloth.height) {
    return count > cloth.count ? [{ ...piece, count: count - cloth.count }] : [];
  }
  return restOfLength({ ...piece, width, height }, cloth);
}

/** The strips are cut off the longer side. */
function restOfLength(piece: DraftPiece & Size, cloth: AsideCloth): readonly DraftPiece[] {
  const side = piece.width === cloth.width ? "height" : "width";
  const rest = piece[side] - times(cloth[side], cloth.count);
  return rest > 0 ? [{ ...piece, kind: piece.kind ?? "length", [side]: length(rest) }] : [];
}
