import { type Length, toNumber } from "../engine/length/index.ts";
import { quoted as inEnglishQuotes, timeSpan, type Voice } from "../words/index.ts";

/** Her own words in German quotation marks. */
export function quoted(text: string): string {
  return `„${ownWords(text)}“`;
}

/** Her own words on one line, without marks. */
export function ownWords(text: string): string {
  return inEnglishQuotes(text).slice(1, -1);
}

const noBreak = "\u00a0";
const timeUnits = { minutes: "Minuten", hour: "Stunde", hours: "Stunden" } as const;

export function timeText(minutes: readonly [number, number], voice: Voice): string {
  const { from, to, unit } = timeSpan(minutes, voice);
  return from === to ? `etwa ${to} ${timeUnits[unit]}` : `zwischen ${from} und ${to} ${timeUnits[unit]}`;
}

/** "2–3½ Stunden". */
export function shortTimeText(minutes: readonly [number, number], voice: Voice): string {
  const { from, to, unit } = timeSpan(minutes, voice);
  return from === to ? `${to}${noBreak}${timeUnits[unit]}` : `${from}–${to}${noBreak}${timeUnits[unit]}`;
}

/** Long seams are spoken of in metres, also by those who cut in inches. */
export function roughLength(length: Length, { number }: Voice): string {
  return `${number(Math.max(1, Math.round(toNumber(length, "cm") / 100)))}${noBreak}m`;
}

export const unitNames = { in: "Inch", cm: "Zentimeter" } as const;
