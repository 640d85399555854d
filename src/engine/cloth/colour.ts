import {
  converter,
  differenceCiede2000,
  formatHex,
  modeHsl,
  modeHwb,
  modeLab,
  modeLab65,
  modeLch,
  modeLrgb,
  modeOklab,
  modeOklch,
  modeP3,
  modeRgb,
  modeXyz50,
  modeXyz65,
  parse,
  useMode,
} from "culori/fn";
import type { Lab } from "./types.ts";

// Every way CSS can write a colour, and the spaces on the way from there to Lab.
useMode(modeRgb);
useMode(modeHsl);
useMode(modeHwb);
useMode(modeLab);
useMode(modeLch);
useMode(modeOklab);
useMode(modeOklch);
useMode(modeP3);
useMode(modeLrgb);
useMode(modeXyz50);
useMode(modeXyz65);
useMode(modeLab65);

const toLab = converter("lab65");
const ciede2000 = differenceCiede2000();

/** A colour read from text: ready for a drawing (`hex`) and for comparing (`lab`, D65). */
export type Colour = { readonly hex: string; readonly lab: Lab };

/** Reads any opaque CSS colour; `null` for what is none. Cloth is opaque, so a colour with alpha is none either. */
export function readColour(text: string): Colour | null {
  const before = known.get(text);
  if (before !== undefined) return before;
  if (known.size >= mostKnown) known.clear();
  const colour = colourIn(text);
  known.set(text, colour);
  return colour;
}

// The rows of a heap name the same few colours again and again.
const known = new Map<string, Colour | null>();
const mostKnown = 1000;

function colourIn(text: string): Colour | null {
  const css = cssOf(text);
  const parsed = css === null ? undefined : parsedColour(css);
  if (parsed === undefined || (parsed.alpha ?? 1) < 1) return null;
  const { l, a, b } = toLab(parsed);
  const lab = { l: rounded(l), a: rounded(a ?? 0), b: rounded(b ?? 0) };
  return Object.values(lab).every(Number.isFinite) ? { hex: formatHex(parsed), lab } : null;
}

// A millionth is far below what an eye or a camera tells apart, and far above the last place, in which browsers and
// Node differ: the same colour is the same number everywhere, and so the same heap gives the same plan.
function rounded(value: number): number {
  // And a grey has no −0.
  return Math.round(value * 1e6) / 1e6 + 0;
}

// On some texts, such as /0A, the parser stumbles instead of saying no.
function parsedColour(css: string): ReturnType<typeof parse> {
  try {
    return parse(css);
  } catch {
    return undefined;
  }
}

// The parser takes hex digits without their #, so that a count such as 100 in the wrong column would be a colour.
// Only six digits are clearly a colour then.
function cssOf(text: string): string | null {
  const css = text.trim();
  if (/^[0-9a-f]{6}$/i.test(css)) return `#${css}`;
  return /^[0-9a-f]{3,8}$/i.test(css) ? null : css;
}

/** A colour to draw with: the nearest that a screen can show, as `#rrggbb`. */
export function hexOf(lab: Lab): string {
  return formatHex({ mode: "lab65", ...lab });
}

/**
 * CIEDE2000 with kL = kC = kH = 1: about 1 is just noticeable, over 5 reads as two colours.
 * Source: Sharma, Wu, Dalal, Color Research & Application 30(1), 2005.
 */
export function colourDifference(one: Lab, other: Lab): number {
  return rounded(ciede2000({ mode: "lab65", ...one }, { mode: "lab65", ...other }));
}

export const valueWords = ["same", "low", "medium", "strong"] as const;
export type ValueWord = (typeof valueWords)[number];

/** How two fabrics stand apart by value (L*) alone, as a grey photograph would show it. Limits: common practice. */
export function valueWord(one: Lab, other: Lab): ValueWord {
  const difference = Math.abs(one.l - other.l);
  if (difference < 5) return "same";
  if (difference < 15) return "low";
  return difference <= 30 ? "medium" : "strong";
}
