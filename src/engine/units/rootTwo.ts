import { type Length, length } from "../length/index.ts";

/**
 * A size with the diagonal of a square in it: (whole + roots √2) ÷ parts. All three are whole numbers, below 2^24 in
 * size; then double precision is off by less than 1e-8, and no such number but a whole one comes that near to a whole
 * one (it stays 1 ÷ (3 × roots) away), so that rounding is exact.
 */
export type WithRoots = { readonly whole: number; readonly roots: number; readonly parts?: number };

/** Rounded up: cloth to cut, never short. */
export function atLeast({ whole, roots, parts = 1 }: WithRoots): Length {
  return length(Math.ceil((whole + roots * Math.SQRT2) / parts));
}

/** Rounded down: what cloth gives, never promised larger. */
export function atMost({ whole, roots, parts = 1 }: WithRoots): Length {
  return length(Math.floor((whole + roots * Math.SQRT2) / parts));
}
