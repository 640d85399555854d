import { add, assert, inches, type Length, length, roundUpTo, type Size, times } from "../length/index.ts";

export type BindingChoice = {
  /** Width the strips are cut to; folded double. */
  readonly stripWidth: Length;
  /** Usable width of the cloth after selvages: what one strip is long. */
  readonly clothWidth: Length;
  /** More than the way round, for corners and the last join. */
  readonly allowance: Length;
};

/** Folded double it fills the edge well; 2 1/4 in is the other usual width. Common practice. */
export const usualBinding: BindingChoice = {
  stripWidth: inches(5, 2),
  clothWidth: inches(40),
  allowance: inches(10),
};

export type Binding = {
  readonly strips: number;
  /** The way round with its allowance. */
  readonly length: Length;
  /** All strips below one another. */
  readonly cloth: Length;
};

/**
 * Straight binding for a quilt of the top's size. Strips are joined on the diagonal, which costs each join one strip
 * width along the middle line: k strips give k × usable width − (k − 1) × strip width.
 */
export function bindingFor(quilt: Size, choice: BindingChoice = usualBinding): Binding {
  const { stripWidth, clothWidth, allowance } = choice;
  assert(clothWidth > stripWidth, "a binding strip is longer than it is wide");
  const needed = add(quilt.width, quilt.width, quilt.height, quilt.height, allowance);
  const strips = Math.max(1, Math.ceil((needed - stripWidth) / (clothWidth - stripWidth)));
  return { strips, length: needed, cloth: times(stripWidth, strips) };
}

/** At most this much bias binding comes of a piece of cloth: its area in strips. Real cutting loses 15 to 20 %. */
export function biasFrom(cloth: Size, stripWidth: Length): Length {
  return length(Math.floor((cloth.width * cloth.height) / stripWidth));
}

/**
 * Side of the square that gives `needed` of bias binding, by area, with `more` for the seams of the tube; rounded up
 * to `step`. Published values add nothing, 1 or 2 in.
 */
export function biasSquare(
  needed: Length,
  stripWidth: Length,
  { more, step }: { readonly more: Length; readonly step: Length },
): Length {
  return roundUpTo(length(Math.ceil(Math.sqrt(needed * stripWidth)) + more), step);
}
