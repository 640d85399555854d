import {
  add,
  assert,
  centimetres,
  type DisplayUnit,
  inches,
  type Length,
  length,
  roundUpTo,
  type Size,
  times,
} from "../length/index.ts";

/** Bought cloth and how it is joined. */
export type Backing = {
  /** How the seams run on the back as it hangs. */
  readonly seams: "vertical" | "horizontal";
  /** Widths of cloth side by side. */
  readonly widths: number;
  /** How long each width is cut. */
  readonly each: Length;
  /** All of them together, not rounded. */
  readonly length: Length;
  /** The same rounded up to what a shop cuts. */
  readonly buy: Length;
};

export type BoughtCloth = {
  /** Usable width after selvages. */
  readonly clothWidth: Length;
  readonly seam: Length;
  /** What a shop cuts to: 1/8 yd, 1/4 yd, 10 cm. */
  readonly roundTo: Length;
};

export const eighthYard = inches(9, 2);
export const quarterYard = inches(9);

/** Cloth off the bolt is cut to the eighth of a yard, or to 10 cm. */
export function shopStep(unit: DisplayUnit): Length {
  return unit === "in" ? eighthYard : centimetres(10);
}

/**
 * The widths rule: how many widths of cloth, joined with `seam`, are at least `wanted` wide. Each join costs two
 * allowances: two widths of 42 in with a 1/2 in seam make 83 in, not 84.
 */
export function widthsNeeded(wanted: Length, clothWidth: Length, seam: Length): number {
  const more = clothWidth - 2 * seam;
  assert(more > 0, "cloth is wider than its two seam allowances");
  return Math.max(1, Math.ceil((wanted - 2 * seam) / more));
}

/** Backing of one cloth, both ways round; `least` is the one that needs less cloth (vertical seams when equal). */
export function backingYardage(
  back: Size,
  cloth: BoughtCloth,
): { readonly vertical: Backing; readonly horizontal: Backing; readonly least: Backing } {
  const vertical = backing("vertical", back.width, back.height, cloth);
  const horizontal = backing("horizontal", back.height, back.width, cloth);
  return { vertical, horizontal, least: vertical.length <= horizontal.length ? vertical : horizontal };
}

function backing(seams: Backing["seams"], across: Length, along: Length, cloth: BoughtCloth): Backing {
  const widths = widthsNeeded(across, cloth.clothWidth, cloth.seam);
  const all = times(along, widths);
  return { seams, widths, each: along, length: all, buy: roundUpTo(all, cloth.roundTo) };
}

/** Extra-wide backing is sold 108 in wide as a rule, and 118. */
export const usualExtraWide = inches(108);

/** One piece of extra-wide cloth without a seam, or null where the back is larger than the cloth both ways. */
export function extraWide(
  back: Size,
  roundTo: Length,
  width: Length = usualExtraWide,
): Pick<Backing, "length" | "buy"> | null {
  const lengths = [
    ...(back.width <= width ? [back.height] : []),
    ...(back.height <= width ? [back.width] : []),
  ].sort((a, b) => a - b);
  const [least] = lengths;
  return least === undefined ? null : { length: least, buy: roundUpTo(least, roundTo) };
}

/**
 * One width made wider: cut corner to corner, slid along the cut and sewn again. Needs cloth of the length
 * Lq × Wf / (2 Wf − Wq), Wf the cloth's width, Wq × Lq the back with a seam's two allowances added to its width.
 * Null where one width is enough as it is, or where the back is more than half as wide again as the cloth: two
 * widths then cost less. Formula and limit: published by quilters in 2009 and 2012, and it holds by similar
 * triangles.
 */
export function diagonallyPieced(back: Size, cloth: BoughtCloth): Pick<Backing, "length" | "buy"> | null {
  const { clothWidth, seam, roundTo } = cloth;
  const wanted = add(back.width, seam, seam);
  if (back.width <= clothWidth || 2 * back.width > 3 * clothWidth) return null;
  const left = 2 * clothWidth - wanted;
  if (left <= 0) return null;
  const needed = length(Math.ceil((back.height * clothWidth) / left));
  return { length: needed, buy: roundUpTo(needed, roundTo) };
}
