import { defaultSettings, type Kind, readColour, type Use } from "../engine/cloth/index.ts";
import type { DisplayUnit, Length, WritingHabit } from "../engine/length/index.ts";
import { colourWordIn } from "./line-colours.ts";
import { countIn, type Taken, wrongCount } from "./line-count.ts";
import { kindIn } from "./line-kind.ts";
import { type Found, type Line, phraseFrom, type Range, spanOf, textOfRange } from "./line-measures.ts";
import { respelled } from "./line-numerals.ts";
import { finishedIn, restOf } from "./line-rest.ts";
import { type SizeRead, sizeRead } from "./line-size-read.ts";
import { sizeIn } from "./line-sizes.ts";
import { tokensOf } from "./line-tokens.ts";
import type { LinePart, LinePartName, LinePiece, LineProblem, LineReading, Span } from "./line-types.ts";
import { usePhrases } from "./line-words.ts";

export type LineHabit = WritingHabit & {
  /** Usable width of cloth, for `x wof` and cloth by the yard; the usual one for the unit where it isn't given. */
  readonly clothWidth?: Length;
};

/** Longer than any leftover needs; what is longer was pasted by mistake. */
export const longestLine = 300;

/**
 * Reads one leftover as one would note it: `4 strips 2 1/2 x 31 teal dots`, `12 blocks 6½`, `fat quarter red`,
 * `crumbs 6 oz`. Sizes are cut sizes; a bare one is in `unit`. Nothing is guessed that could mean something else, and
 * every part says from where in the line it is. Never throws.
 */
export function readLine(text: string, unit: DisplayUnit, habit: LineHabit = {}): LineReading {
  if (text.length > longestLine) return tooLong(text);
  const { text: inDigits, original } = respelled(text);
  return asTyped(readDigits(inDigits, unit, habit), text, original);
}

/** Its spans as they lie in the line she typed. */
function asTyped(reading: LineReading, text: string, original: (span: Span) => Span): LineReading {
  const lain = <S extends Span>(one: S): S => {
    const span = original(one);
    return { ...one, ...span, ...("text" in one ? { text: text.slice(span.start, span.end) } : {}) };
  };
  return { ...reading, parts: reading.parts.map(lain), problems: reading.problems.map(lain) };
}

function readDigits(text: string, unit: DisplayUnit, habit: LineHabit): LineReading {
  const { clothWidth = defaultSettings[unit].clothWidth } = habit;
  const line: Line = { text, tokens: tokensOf(text), unit, habit, clothWidth };
  const kind = kindIn(line);
  const size = sizeIn(line, kind);
  const measured = sizeRead(line, size, kind?.value ?? null);
  const known = [...(kind === null ? [] : [{ is: "kind", ...kind } as const]), ...measured.parts];
  return assembled(line, { kind, measured, known });
}

function tooLong(text: string): LineReading {
  const problem = {
    kind: "too-long",
    start: 0,
    end: text.length,
    length: text.length,
    most: longestLine,
  } as const;
  return { piece: {}, rough: null, look: null, parts: [], problems: [problem] };
}

type PartRange = Range & { readonly is: LinePartName };

type Known = {
  readonly kind: Found<Kind> | null;
  readonly measured: SizeRead;
  readonly known: readonly PartRange[];
};

function assembled(line: Line, { kind, measured, known }: Known): LineReading {
  const taken = takenBy(known, kind, measured);
  const count = measured.count ?? countIn(line, taken);
  const counted = withPart(known, "count", count);
  const use = useIn(line, takenBy(counted, kind, measured));
  const colour = colourIn(line);
  const parts = withPart(withPart(counted, "use", use), "colour", colour);
  const rest = restOf(line, takenBy(parts, kind, measured), count !== null);
  const wrong = count === null ? wrongCount(line, taken) : null;
  const piece = pieceOf({ kind, measured, count, use, colour, fabric: rest.fabric });
  return {
    piece,
    rough: measured.rough,
    look: colour === null ? colourWordIn(rest.fabric) : null,
    parts: [...parts.map((part) => partOf(line, part)), ...rest.parts].sort((a, b) => a.start - b.start),
    problems: [
      ...measured.problems,
      ...countProblems(line, count, wrong),
      ...finishedIn(line, takenBy(measured.parts, null, measured)),
      ...rest.problems.filter(({ start }) => start !== (wrong && spanOf(line, wrong).start)),
    ],
  };
}

function takenBy(parts: readonly PartRange[], kind: Found<Kind> | null, measured: SizeRead): Taken {
  const places = new Set(
    parts.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, at) => from + at)),
  );
  return { kind, sizeFrom: measured.from, has: (at) => places.has(at) };
}

function withPart(parts: readonly PartRange[], is: LinePartName, range: Range | null): readonly PartRange[] {
  return range === null ? parts : [...parts, { is, from: range.from, to: range.to }];
}

function useIn(line: Line, taken: Taken): Found<Use> | null {
  for (const from of line.tokens.keys()) {
    const found = taken.has(from) ? null : phraseFrom(line, from, (phrase) => usePhrases.get(phrase));
    if (found !== null) return found;
  }
  return null;
}

function colourIn({ tokens }: Line): Found<string> | null {
  const at = tokens.findIndex(({ kind, text }) => kind === "colour" && readColour(text) !== null);
  return at < 0 ? null : { from: at, to: at + 1, value: tokens[at]?.text ?? "" };
}

type Pieces = {
  readonly kind: Found<Kind> | null;
  readonly measured: SizeRead;
  readonly count: Found<number> | null;
  readonly use: Found<Use> | null;
  readonly colour: Found<string> | null;
  readonly fabric: string;
};

function pieceOf({ kind, measured, count, use, colour, fabric }: Pieces): LinePiece {
  return {
    ...(kind === null ? {} : { kind: kind.value }),
    ...measured.fields,
    ...(count === null ? {} : { count: count.value }),
    ...(fabric === "" ? {} : { fabric }),
    ...(colour === null ? {} : { colour: colour.value }),
    ...(use === null ? {} : { use: use.value }),
  };
}

function countProblems(line: Line, count: Found<number> | null, wrong: Range | null): LineProblem[] {
  const range = wrong ?? (count?.value === 0 ? count : null);
  if (range === null) return [];
  return [{ kind: "not-a-count", ...spanOf(line, range), text: textOfRange(line, range) }];
}

function partOf(line: Line, { is, ...range }: PartRange): LinePart {
  return { is, ...spanOf(line, range), text: textOfRange(line, range) };
}
