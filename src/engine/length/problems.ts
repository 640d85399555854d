import type { Result } from "./result.ts";
import type { Area, DisplayUnit, Length, Size } from "./types.ts";

/** What she wrote, as she wrote it. */
type Written<K extends string> = { readonly kind: K; readonly text: string };

/**
 * Why a text is no length (area, weight). The text is never read in another way than its writer can have meant:
 * where two readings are possible, it is refused with both.
 */
export type LengthProblem =
  | Written<"empty">
  | Written<"not-a-number">
  /** Digits of another script than 0–9. */
  | Written<"other-digits">
  | (Written<"unknown-unit"> & { readonly unit: string })
  /** A weight without oz or g. */
  | Written<"no-unit">
  | Written<"zero">
  | Written<"negative">
  /** Over 10,000 in, or an area or a weight no heap has. */
  | Written<"too-large">
  /** `1,500` may be 1.5 or 1500, `21/2` may be 2 1/2 or 10 1/2. The readings are as she could type them. */
  | (Written<"ambiguous"> & { readonly readings: readonly [string, string] })
  /**
   * A spreadsheet made a date of it: `2-Jan` may have been 1/2, and `02. Mai` 2.5. `null`: nothing likely fits, as
   * with 2-Feb.
   */
  | (Written<"date"> & { readonly fraction: string | null });

/** What is known of the writer's habits: the decimal sign of her table or tongue. Without it three digits may be thousands. */
export type WritingHabit = { readonly decimal?: "." | "," };

export type SizeProblem =
  /** Not two lengths with × or x between them. */
  | Written<"not-two-lengths">
  | { readonly kind: "side"; readonly side: "width" | "height"; readonly problem: LengthProblem };

export type ParseLength = (
  text: string,
  unit: DisplayUnit,
  habit?: WritingHabit,
) => Result<Length, LengthProblem>;
export type ParseSizePair = (
  text: string,
  unit: DisplayUnit,
  habit?: WritingHabit,
) => Result<Size, SizeProblem>;
/** A bare number takes sq in or cm². */
export type ParseArea = (
  text: string,
  unit: DisplayUnit,
  habit?: WritingHabit,
) => Result<Area, LengthProblem>;
/** Grams. A bare number is refused: a kitchen scale may show either unit. */
export type ParseWeight = (text: string, habit?: WritingHabit) => Result<number, LengthProblem>;
