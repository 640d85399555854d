import {
  type Area,
  areaToNumber,
  type DisplayUnit,
  formatSize,
  formatWithUnit,
  inches,
  type Length,
  millimetres,
  roundUpTo,
  showsExactly,
  toNumber,
} from "../engine/length/index.ts";
import type { TradeWords } from "./trade.ts";
import type { Voice } from "./voice.ts";

/** Numbers and sizes as people who speak so write them. What the ruler cannot show exactly is "about". */
export function voiceOf(trade: TradeWords, unit: DisplayUnit): Voice {
  const { language } = trade;
  const numbers = new Intl.NumberFormat(language, { maximumFractionDigits: 2 });
  const shares = new Intl.NumberFormat(language, { style: "percent", maximumFractionDigits: 0 });
  const plurals = new Intl.PluralRules(language);
  const both = new Intl.ListFormat(language, { type: "conjunction" });
  const either = new Intl.ListFormat(language, { type: "disjunction" });
  const about = (length: Length) => (showsExactly(length, { unit }) ? "" : trade.about);
  const format = { unit, decimal: trade.decimal, name: unit === "in" ? trade.inch : unit };
  return {
    trade,
    unit,
    length: (length) => `${about(length)}${formatWithUnit(length, format)}`,
    size: (size) => `${about(size.width) || about(size.height)}${formatSize(size, format)}`,
    area: (area) => areaText(area, { trade, unit }, numbers),
    number: (count) => numbers.format(count),
    percent: (share) => shares.format(share),
    isOne: (count) => plurals.select(count) === "one",
    count: (count, one, many) => `${numbers.format(count)} ${plurals.select(count) === "one" ? one : many}`,
    list: (parts) => both.format(parts),
    either: (parts) => either.format(parts),
  };
}

export function unitNames({ trade }: Voice): { readonly [U in DisplayUnit]: string } {
  return { in: "Inches", cm: trade.language === "en-US" ? "Centimeters" : "Centimetres" };
}

const noBreak = "\u00a0";

function areaText(
  area: Area,
  { trade, unit }: Pick<Voice, "trade" | "unit">,
  numbers: Intl.NumberFormat,
): string {
  const count = areaToNumber(area, unit);
  // A slab of a few square inches keeps its fraction, a back does not need one.
  const shown = numbers.format(count < 10 ? Math.round(count * 10) / 10 : Math.round(count));
  return `${shown}${noBreak}${unit === "in" ? trade.squareInch : "cm²"}`;
}

const eighthOfYard = inches(9, 2);
const tenthOfMetre = millimetres(100);

/** Cloth off the bolt, as it is sold and rounded up, so that it is never short: 2⅞ yd, 2.7 m. */
export function boltText(length: Length, { trade, unit }: Voice): string {
  if (trade.soldBy === "m" || unit === "cm") {
    const metres = toNumber(roundUpTo(length, tenthOfMetre), "cm") / 100;
    return `${new Intl.NumberFormat(trade.language, { maximumFractionDigits: 1 }).format(metres)}${noBreak}m`;
  }
  const eighths = roundUpTo(length, eighthOfYard) / eighthOfYard;
  const whole = Math.floor(eighths / 8);
  const rest = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"][eighths % 8] ?? "";
  return `${whole === 0 && rest !== "" ? "" : whole}${rest}${noBreak}yd`;
}

/** Long seams: a length no one measures. */
export function roughLength(length: Length, { unit, number }: Voice): string {
  if (unit === "in") return `${number(Math.round(toNumber(length, "in") / 12))}${noBreak}ft`;
  return `${number(Math.round(toNumber(length, "cm") / 100))}${noBreak}m`;
}

/** The two ends of a range of minutes, both rounded to what one can plan with. */
export function timeText(minutes: readonly [number, number], voice: Voice): string {
  const { from, to, unit } = timeSpan(minutes, voice);
  return from === to ? `about ${to} ${unit}` : `between ${from} and ${to} ${unit}`;
}

/** The same where there is little room: "2–3½ hours". */
export function shortTimeText(minutes: readonly [number, number], voice: Voice): string {
  const { from, to, unit } = timeSpan(minutes, voice);
  return from === to ? `${to}${noBreak}${unit}` : `${from}–${to}${noBreak}${unit}`;
}

export type TimeSpan = {
  readonly from: string;
  readonly to: string;
  readonly unit: "minutes" | "hour" | "hours";
};

/** Both ends, each rounded to what one can plan with. */
export function timeSpan([least, most]: readonly [number, number], voice: Voice): TimeSpan {
  if (most < 90) {
    const shown = (minutes: number) => voice.number(roundTo(minutes, 5));
    return { from: shown(least), to: shown(most), unit: "minutes" };
  }
  const [from, to] = [roundTo(least / 60, 0.5), roundTo(most / 60, 0.5)];
  return { from: half(from, voice), to: half(to, voice), unit: to <= 1 ? "hour" : "hours" };
}

function roundTo(value: number, step: number): number {
  return Math.max(step, Math.round(value / step) * step);
}

/** 2.5 as 2½. */
function half(count: number, voice: Voice): string {
  const whole = Math.floor(count);
  if (whole === count) return voice.number(whole);
  return `${whole === 0 ? "" : voice.number(whole)}½`;
}

const million = 1_000_000;

/** Room on a device, in the unit that gives a small number. */
export function bytesText(bytes: number, { trade }: Voice): string {
  const [unit, size] =
    bytes >= 1000 * million ? (["gigabyte", 1000 * million] as const) : (["megabyte", million] as const);
  const format = new Intl.NumberFormat(trade.language, { style: "unit", unit, maximumSignificantDigits: 2 });
  return format.format(Math.max(bytes / size, 0.1));
}

/** A day and the time on it, as people who speak so say it. Milliseconds since 1970, UTC. */
export function momentText(at: number, { trade }: Voice): string {
  const format = new Intl.DateTimeFormat(trade.language, {
    day: "numeric",
    month: "long",
    hour: "numeric",
    minute: "2-digit",
  });
  return format.format(at);
}

export function dayText(at: number, { trade }: Voice): string {
  return new Intl.DateTimeFormat(trade.language, { day: "numeric", month: "long", year: "numeric" }).format(
    at,
  );
}
