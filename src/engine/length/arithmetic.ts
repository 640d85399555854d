import {
  type Area,
  type Cut,
  type DisplayUnit,
  type Finished,
  type Length,
  unitsPerCentimetre,
  unitsPerInch,
  unitsPerMillimetre,
} from "./types.ts";

/** Our own mistakes stop the program; a quilter's mistakes are values. */
export function assert(condition: boolean, law: string): asserts condition {
  if (!condition) throw new Error(`Verso broke its own rule: ${law}`);
}

/** A length from whole units of 1/320 mm. Throws when `units` is not a whole number. */
export function length(units: number): Length {
  assert(Number.isSafeInteger(units), `a length is a whole number of 1/320 mm, not ${units}`);
  return units as Length;
}

/** `inches(2)` is 2 in, `inches(1, 8)` is 1/8 in. Throws for fractions that 1/320 mm cannot hold, such as 1/3 in. */
export function inches(numerator: number, denominator = 1): Length {
  return length((numerator * unitsPerInch) / denominator);
}

/** Millimetres, whole or in tenths. Throws for anything finer than 1/320 mm. */
export function millimetres(count: number): Length {
  return nearest(count * unitsPerMillimetre, `${count} mm`);
}

export function centimetres(count: number): Length {
  return nearest(count * unitsPerCentimetre, `${count} cm`);
}

// 6.3 × 320 is 2015.9999999999998 in binary: the written decimal is meant, so the nearest unit is it.
function nearest(units: number, what: string): Length {
  const whole = Math.round(units);
  assert(Math.abs(units - whole) < 1e-6, `${what} is a whole number of 1/320 mm`);
  return length(whole);
}

export function finished(units: Length): Finished {
  return units as Finished;
}

export function cut(units: Length): Cut {
  return units as Cut;
}

export function add<L extends Length>(a: L, ...more: readonly Length[]): L {
  return more.reduce<number>((total, next) => total + next, a) as L;
}

export function subtract<L extends Length>(a: L, ...less: readonly Length[]): L {
  return less.reduce<number>((total, next) => total - next, a) as L;
}

/** A whole multiple. */
export function times<L extends Length>(a: L, count: number): L {
  return length(a * count) as L;
}

export function sum<L extends Length>(lengths: readonly L[]): L {
  return lengths.reduce<number>((total, next) => total + next, 0) as L;
}

export function smaller<L extends Length>(a: L, b: L): L {
  return a <= b ? a : b;
}

export function larger<L extends Length>(a: L, b: L): L {
  return a >= b ? a : b;
}

/** What to cut so that `size` shows: the seam allowances of its two sides are added. */
export function toCut(size: Finished, oneSeam: Length, otherSeam: Length = oneSeam): Cut {
  return (size + oneSeam + otherSeam) as Cut;
}

/** What shows of a cut size once both sides are sewn. May be zero or less: the piece is then all seam. */
export function toFinished(size: Cut, oneSeam: Length, otherSeam: Length = oneSeam): Finished {
  return (size - oneSeam - otherSeam) as Finished;
}

/** Down to a whole number of steps: measured cloth is never promised larger than it is. */
export function roundDownTo<L extends Length>(size: L, step: Length): L {
  return (Math.floor(size / step) * step) as L;
}

/** Up to a whole number of steps: bought cloth is never short. */
export function roundUpTo<L extends Length>(size: L, step: Length): L {
  return (Math.ceil(size / step) * step) as L;
}

/**
 * Shares `total` into `count` parts that differ by at most one `step` and add up to `total` exactly.
 * What is less than a step goes to the last part.
 */
export function share<L extends Length>(total: L, count: number, step: Length = length(1)): L[] {
  assert(Number.isInteger(count) && count > 0, "a length is shared among at least one part");
  const steps = Math.floor(total / step);
  const parts = Array.from({ length: count }, (_, index) => {
    const units = Math.floor(((index + 1) * steps) / count) - Math.floor((index * steps) / count);
    return (units * step) as L;
  });
  const last = parts[count - 1] as L;
  parts[count - 1] = add(last, length(total - steps * step));
  assert(sum(parts) === total, "shares must add up to the whole");
  return parts;
}

export function area(width: Length, height: Length): Area {
  return (width * height) as Area;
}

/** An area from units counted elsewhere, such as a sum of products. */
export function areaOf(unitsSquared: number): Area {
  return unitsSquared as Area;
}

/** The number that stands for `size` in a file or a figure, in the given unit. Not for showing to her. */
export function toNumber(size: Length, unit: DisplayUnit): number {
  return size / unitsIn(unit);
}

export function areaToNumber(size: Area, unit: DisplayUnit): number {
  return size / unitsIn(unit) ** 2;
}

/** Reads a file's number back; `null` when it is more than 1e-6 of the unit off any whole 1/320 mm. */
export function fromNumber(value: number, unit: DisplayUnit): Length | null {
  const whole = Math.round(value * unitsIn(unit));
  if (!Number.isSafeInteger(whole)) return null;
  return Math.abs(value - whole / unitsIn(unit)) <= 1e-6 ? length(whole) : null;
}

export function unitsIn(unit: DisplayUnit): number {
  return unit === "in" ? unitsPerInch : unitsPerCentimetre;
}
