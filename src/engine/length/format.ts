import { assert, length } from "./arithmetic.ts";
import { type DisplayUnit, type Length, type Size, unitsPerInch } from "./types.ts";

export type ShownUnit = DisplayUnit | "mm";

export type LengthFormat = {
  readonly unit: ShownUnit;
  /** Show whole steps only, such as the ruler's. Default, and in place of what the unit cannot write: 1/64 in or 0.1 mm. */
  readonly step?: Length;
  /** Which step, where the length lies between two. Down for what she has, up for what she buys. */
  readonly round?: "nearest" | "down" | "up";
  /** Decimal sign of metric sizes; a full stop by default. */
  readonly decimal?: "." | ",";
  /** What the unit is called where it is not said by its sign. */
  readonly name?: string;
};

/** Before a unit that is a word. */
const noBreakSpace = "\u00a0";

/** Narrow and never broken: 2 3⁄16 and 12½ × 20⅛ in stay on one line. */
const thinSpace = "\u202f";
const fractionSlash = "\u2044";

const sixtyFourth = 127;
const tenthOfMillimetre = 32;

const builtIn: Readonly<Record<string, string>> = {
  "1/2": "½",
  "1/4": "¼",
  "3/4": "¾",
  "1/8": "⅛",
  "3/8": "⅜",
  "5/8": "⅝",
  "7/8": "⅞",
};

/**
 * A length as she would write it, without its unit: `12½`, `20⅛`, `2 3⁄16`, `31.8`. Rounded once, to `step`; whether
 * that lost anything says `showsExactly`. Inches are never decimals.
 */
export function formatLength(size: Length, format: LengthFormat): string {
  const shown = shownLength(size, format);
  const sign = shown < 0 ? "−" : "";
  return sign + (format.unit === "in" ? inInches(Math.abs(shown)) : inMetric(Math.abs(shown), format));
}

/** With its unit: `12½ in`. */
export function formatWithUnit(size: Length, format: LengthFormat): string {
  return `${formatLength(size, format)}${unitText(format)}`;
}

function unitText({ unit, name = unit }: LengthFormat): string {
  return `${name === unit ? thinSpace : noBreakSpace}${name}`;
}

/** Width × height with one unit: `12½ × 20⅛ in`. */
export function formatSize({ width, height }: Size, format: LengthFormat): string {
  return `${formatLength(width, format)}${thinSpace}×${thinSpace}${formatWithUnit(height, format)}`;
}

/** Whether the text shows the very length. If not, say "about". */
export function showsExactly(size: Length, format: LengthFormat): boolean {
  return shownLength(size, format) === size;
}

/**
 * The length as it can be typed into a table, without loss: `2 1/2`, `31.8`, and `8.46875 mm` for what lies between
 * the marks. `parseLength` of it in the same unit is the length.
 */
export function typedLength(size: Length, unit: DisplayUnit): string {
  if (unit === "in" && size % sixtyFourth === 0) return typedInches(size);
  if (unit === "cm" && size % tenthOfMillimetre === 0) return inMetric(size, { unit });
  return `${typedMillimetres(size)} mm`;
}

function shownLength(size: Length, format: LengthFormat): Length {
  const steps = size / writableStep(format);
  const whole =
    format.round === "down"
      ? Math.floor(steps)
      : format.round === "up"
        ? Math.ceil(steps)
        : Math.round(steps);
  return length(whole * writableStep(format));
}

// A step of the other system (1 mm in inches) has no fraction of its own: the unit's finest mark is used.
function writableStep({ unit, step }: LengthFormat): number {
  const finest = unit === "in" ? sixtyFourth : tenthOfMillimetre;
  return step !== undefined && step > 0 && step % finest === 0 ? step : finest;
}

type Fraction = { readonly whole: number; readonly over: number; readonly under: number };

function fractionOf(size: number): Fraction {
  assert(size % sixtyFourth === 0, "inches are shown in whole sixty-fourths");
  const whole = Math.floor(size / unitsPerInch);
  let [over, under] = [(size % unitsPerInch) / sixtyFourth, 64];
  while (over % 2 === 0 && under > 1) [over, under] = [over / 2, under / 2];
  return { whole, over, under };
}

function inInches(size: number): string {
  const { whole, over, under } = fractionOf(size);
  if (over === 0) return `${whole}`;
  const sign = builtIn[`${over}/${under}`];
  if (sign) return whole === 0 ? sign : `${whole}${sign}`;
  const built = `${over}${fractionSlash}${under}`;
  return whole === 0 ? built : `${whole}${thinSpace}${built}`;
}

function typedInches(size: number): string {
  const { whole, over, under } = fractionOf(size);
  if (over === 0) return `${whole}`;
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

function inMetric(size: number, { unit, decimal = "." }: LengthFormat): string {
  const tenths = size / tenthOfMillimetre;
  const text = unit === "mm" ? (tenths / 10).toFixed(1) : (tenths / 100).toFixed(2);
  return text.replace(/\.?0+$/, "").replace(".", decimal);
}

// 1/320 mm is 0.003125 mm. Four decimals at least, since three might be read as thousands.
function typedMillimetres(size: number): string {
  const digits = (BigInt(size) * 3125n).toString().padStart(7, "0");
  const whole = digits.slice(0, -6);
  const decimals = digits.slice(-6).replace(/0{1,2}$/, "");
  return `${whole}.${decimals}`;
}
