/**
 * From what a person writes to an exact rational number: `2 1/2`, `2½`, `2-1/2`, `2.5`, `2,5`, `1/2`. Nothing is
 * guessed: what can be read in two ways is `Ambiguous`.
 */
import { err, ok, type Result } from "./result.ts";

/** over / under, exactly. `under` is never 0. */
export type Rational = { readonly over: bigint; readonly under: bigint };

export type Ambiguous = { readonly kind: "ambiguous"; readonly readings: readonly [string, string] };
export type NumberProblem = Ambiguous | { readonly kind: "not-a-number" };

const vulgarFractions: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅐": "1/7",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅑": "1/9",
  "⅒": "1/10",
};
const vulgar = /[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g;
const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const lowered = "₀₁₂₃₄₅₆₇₈₉";
const raisedOverLowered = new RegExp(`([${raised}]+)[⁄∕/]([${lowered}]+)`, "g");

/**
 * One spelling for all keyboards: lower case, single plain spaces, `/` for every slash, `"` and `'` for inch and foot
 * marks, built-up fractions with a space on either side (so that `2½` is not 21/2 and `½5` not 1/25).
 */
export function plainSpelling(text: string): string {
  return text
    .toLowerCase()
    .replace(/(\d)[-‐‑](?=[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])/g, "$1 ")
    .replace(vulgar, (sign) => ` ${vulgarFractions[sign]} `)
    .replace(raisedOverLowered, (_, over: string, under: string) => ` ${level(over)}/${level(under)} `)
    .replace(/[⁄∕／]/g, "/")
    .replace(/″|[“”„‟]|''|′′|’’/g, '"')
    .replace(/[′‘’]/g, "'")
    .replace(/(\d)[‐‑](\d)/g, "$1-$2")
    .replace(/[\s\u200b-\u200d\u2060\ufeff]+/gu, " ")
    .trim();
}

function level(digits: string): string {
  const position = (digit: string) => Math.max(raised.indexOf(digit), lowered.indexOf(digit));
  return [...digits].map(position).join("");
}

/** Longest first, so that `2 1/2` is not read as 2. */
export const numberPattern = String.raw`\d+[ -]\d+/\d+|\d+/\d+|\d*[.,]\d+|\d+`;

/** How a number with one sign and three digits behind it is to be read. */
export type DecimalReading = (sign: "." | ",", thousands: bigint) => "decimal" | "ambiguous";

/** Reads one number that matches `numberPattern`. */
export function readNumber(written: string, reading: DecimalReading): Result<Rational, NumberProblem> {
  if (written.includes("/")) return readFraction(written);
  if (/[.,]/.test(written)) return readDecimal(written, reading);
  return ok({ over: BigInt(written), under: 1n });
}

function readFraction(written: string): Result<Rational, NumberProblem> {
  const [over, under, whole] = fractionParts(written);
  if (under === 0n) return err({ kind: "not-a-number" });
  if (whole !== null) {
    // A mixed number ends in a proper fraction: 2 9/8 is a slip, nobody can say of what.
    return over < under ? ok({ over: whole * under + over, under }) : err({ kind: "not-a-number" });
  }
  const lostSpace = over < under ? null : mixedWithoutSpace(written);
  if (lostSpace === null) return ok({ over, under });
  return err({ kind: "ambiguous", readings: [lostSpace, mixed(over, under)] });
}

function fractionParts(written: string): [over: bigint, under: bigint, whole: bigint | null] {
  const [over = "0", under = "0"] = (written.split(/[ -]/).at(-1) ?? "").split("/");
  const whole = /^(\d+)[ -]/.exec(written)?.[1];
  return [BigInt(over), BigInt(under), whole === undefined ? null : BigInt(whole)];
}

// 21/2 may be 2 1/2 that lost its space on the way, as pasted text does. 13/16 is proper and stays what it is.
function mixedWithoutSpace(written: string): string | null {
  const [, whole, over, under] = /^(\d+)([1-9]\d*)\/(\d+)$/.exec(written) ?? [];
  if (whole === undefined || over === undefined || under === undefined) return null;
  return BigInt(over) < BigInt(under) ? `${whole} ${over}/${under}` : null;
}

function mixed(over: bigint, under: bigint): string {
  const rest = over % under;
  return rest === 0n ? `${over / under}` : `${over / under} ${rest}/${under}`;
}

function readDecimal(written: string, reading: DecimalReading): Result<Rational, NumberProblem> {
  const sign = written.includes(".") ? "." : ",";
  const [whole = "", digits = ""] = written.split(sign);
  const thousands = `${whole}${digits}`;
  const grouped = /^[1-9]\d{0,2}[.,]\d{3}$/.test(written);
  if (grouped && reading(sign, BigInt(thousands)) === "ambiguous") {
    return err({ kind: "ambiguous", readings: [`${whole}.${digits}`.replace(/\.?0+$/, ""), thousands] });
  }
  return ok({ over: BigInt(thousands), under: 10n ** BigInt(digits.length) });
}
