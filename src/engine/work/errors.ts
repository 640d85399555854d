import { type Length, length } from "../length/index.ts";

/** Errors that all lean the same way, such as one seam guide set wide: they simply add. */
export function sharedStack(errors: readonly number[]): number {
  return errors.reduce((total, error) => total + Math.abs(error), 0);
}

/** Errors that fall either way by chance: root of the sum of squares (law of propagation, JCGM 100:2008). */
export function randomStack(errors: readonly number[]): number {
  return Math.sqrt(errors.reduce((total, error) => total + error ** 2, 0));
}

/** What one seam is off by: `shared` the same way at every seam, `random` either way. */
export type SeamError = { readonly shared: Length; readonly random: Length };

/**
 * How far a row of `seams` seams may be off: the shared part grows with their number, the chance part with its
 * root. Rounded up.
 */
export function stackedError(seams: number, { shared, random }: SeamError): Length {
  return length(Math.ceil(seams * shared + Math.sqrt(seams) * random));
}

/** An allowance that is `error` too wide takes twice that from what shows, at every seam. */
export function lostToWideSeams(seams: number, error: Length): Length {
  return length(2 * seams * error);
}
