/**
 * Exact lengths. A `Length` is a whole number of 1/320 mm: 1/64 in is 127 of them and 0.1 mm is 32, so every
 * size a ruler can show is exact and sums never drift. Only this room may make one from a plain number.
 *
 * A `Finished` size is what shows between seams; a `Cut` size is what the cutter needs. Both are lengths, neither
 * is the other: `toCut` and `toFinished` are the only ways across.
 */
declare const lengthMark: unique symbol;
declare const finishedMark: unique symbol;
declare const cutMark: unique symbol;
declare const areaMark: unique symbol;

export type Length = number & { readonly [lengthMark]: true };
export type Finished = Length & { readonly [finishedMark]: true };
export type Cut = Length & { readonly [cutMark]: true };

/** An area in (1/320 mm)². Up to 400 × 400 in this is far below 2^53, so it is exact too. */
export type Area = number & { readonly [areaMark]: true };

/** The unit she thinks in. Numbers in files carry it once, at the top. */
export const displayUnits = ["in", "cm"] as const;
export type DisplayUnit = (typeof displayUnits)[number];

export type Size<L extends Length = Length> = { readonly width: L; readonly height: L };

export const unitsPerInch = 8128;
export const unitsPerMillimetre = 320;
export const unitsPerCentimetre = 3200;
