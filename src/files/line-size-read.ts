import { type Kind, kindFromSides } from "../engine/cloth/index.ts";
import type { Length } from "../engine/length/index.ts";
import { type Found, type Line, type Measure, type Range, spanOf, textOfRange } from "./line-measures.ts";
import { isYardage, type Side, type SizeFound, sizeOfNamed } from "./line-sizes.ts";
import type { LinePartName, LinePiece, LineProblem } from "./line-types.ts";

type PartRange = Range & { readonly is: LinePartName };

/** What the size says of the piece, which parts of the line it took, and what can't be read of it. */
export type SizeRead = {
  readonly fields: Pick<LinePiece, "kind" | "width" | "height" | "area" | "weight">;
  readonly rough: { readonly width: Length; readonly total: Length } | null;
  /** How many, where that stands among the sides. */
  readonly count: Found<number> | null;
  readonly parts: readonly PartRange[];
  /** Its first token; null: there is no size. */
  readonly from: number | null;
  readonly problems: readonly LineProblem[];
};

export function sizeRead(line: Line, size: SizeFound, kind: Kind | null): SizeRead {
  switch (size.kind) {
    case "pair":
      return pairRead(line, size, kind);
    case "three-numbers":
      return refused(line, size.range, "three-numbers");
    case "named": {
      const fields = sizeOfNamed(size.size.value, line);
      return read({ fields, parts: [{ is: "named-size", ...rangeOf(size.size) }] });
    }
    case "area":
      return amountRead(line, size.area, "area", kind);
    case "weight":
      return amountRead(line, size.weight, "weight", kind);
    case "strips":
      return stripsRead(line, size);
    case "one":
      return oneRead(line, size, kind);
    case "none":
      return read({ problems: [nothing(line, kind)] });
  }
}

function read(known: Partial<SizeRead>): SizeRead {
  const { parts = [] } = known;
  const from = parts.length === 0 ? null : Math.min(...parts.map((part) => part.from));
  return { fields: {}, rough: null, count: null, problems: [], from, ...known, parts };
}

function rangeOf({ from, to }: Range): Range {
  return { from, to };
}

function refused(line: Line, range: Range, kind: "three-numbers" | "not-square"): SizeRead {
  const problem = { kind, ...spanOf(line, range), text: textOfRange(line, range) };
  return read({ parts: [{ is: "sides", ...rangeOf(range) }], problems: [problem] });
}

function nothing(line: Line, kind: Kind | null): LineProblem {
  const span = { start: 0, end: line.text.length };
  return kind === "crumbs" ? { kind: "no-amount", ...span } : { kind: "no-size", pieceKind: kind, ...span };
}

type Pair = Extract<SizeFound, { kind: "pair" }>;

function pairRead(line: Line, { width, height, count }: Pair, kind: Kind | null): SizeRead {
  const whole = { from: width.from, to: height.to };
  if (kind === "crumbs")
    return { ...read({ parts: [{ is: "sides", ...whole }] }), problems: [nothing(line, kind)] };
  const sides = { ...valueAs("width", width), ...valueAs("height", height) };
  if (isSquareKind(kind) && !isSquare(sides)) return refused(line, whole, "not-square");
  return read({
    fields: sides,
    count: count === null ? null : countOf(line, count, whole),
    parts: [sidePart("width", width), sidePart("height", height)],
    problems: [...sideProblems(line, "width", width), ...sideProblems(line, "height", height)],
  });
}

// The × between the count and the sides belongs to the count.
function countOf(line: Line, count: Range, sides: Range): Found<number> {
  const value = Number(textOfRange(line, count));
  return count.from < sides.from
    ? { from: count.from, to: sides.from, value }
    : { from: sides.to, to: count.to, value };
}

function isSquareKind(kind: Kind | null): boolean {
  return kind === "square" || kind === "half-square-triangle";
}

function isSquare({ width, height }: { readonly width?: Length; readonly height?: Length }): boolean {
  if (width === undefined || height === undefined || width === height) return true;
  return kindFromSides(width, height) === "square";
}

function valueAs(field: "width" | "height", side: Side): { width?: Length; height?: Length } {
  return side.read.ok ? { [field]: side.read.value } : {};
}

function sidePart(is: "width" | "height", side: Side): PartRange {
  return { is: side.isClothWidth ? "cloth-width" : is, ...rangeOf(side) };
}

function sideProblems(line: Line, field: "width" | "height", side: Measure<Length>): LineProblem[] {
  if (side.read.ok) return [];
  return [{ kind: "not-a-size", field, problem: side.read.error, ...spanOf(line, side) }];
}

function amountRead(
  line: Line,
  measure: Measure<number>,
  field: "area" | "weight",
  kind: Kind | null,
): SizeRead {
  const parts = [{ is: field, ...rangeOf(measure) }];
  if (!measure.read.ok) {
    const problem = {
      kind: "not-a-size",
      field,
      problem: measure.read.error,
      ...spanOf(line, measure),
    } as const;
    return read({ parts, problems: [problem] });
  }
  if (kind !== null && kind !== "crumbs") return read({ parts, problems: [nothing(line, kind)] });
  return read({ parts, fields: { kind: "crumbs", [field]: measure.read.value } });
}

function stripsRead(line: Line, { total, width }: Extract<SizeFound, { kind: "strips" }>): SizeRead {
  const parts = [
    { is: "total", ...rangeOf(total) },
    { is: "width", ...rangeOf(width) },
  ] as const;
  if (total.read.ok && width.read.ok) {
    return read({ parts, rough: { width: width.read.value, total: total.read.value } });
  }
  return read({
    parts,
    problems: [...sideProblems(line, "height", total), ...sideProblems(line, "width", width)],
  });
}

type One = Extract<SizeFound, { kind: "one" }>;

/** One measure: both sides of a square, or across the cloth, or not enough. */
function oneRead(line: Line, { side, acrossCloth }: One, kind: Kind | null): SizeRead {
  if (acrossCloth !== null) return acrossRead(line, side, acrossCloth);
  const problems = sideProblems(line, "width", side);
  const isByTheYard = (kind === null || kind === "length") && isYardage(textOfRange(line, side));
  if (isByTheYard) {
    const fields = { width: line.clothWidth, ...valueAs("height", side) };
    return read({ fields, parts: [{ is: "height", ...rangeOf(side) }], problems });
  }
  if (problems.length > 0 || hasOneMeasure(kind)) {
    const fields = { ...valueAs("width", side), ...valueAs("height", side) };
    return read({ fields, parts: [{ is: "sides", ...rangeOf(side) }], problems });
  }
  const problem = { kind: "one-side", pieceKind: kind, ...spanOf(line, side) } as const;
  return read({
    fields: valueAs("width", side),
    parts: [{ is: "width", ...rangeOf(side) }],
    problems: [problem],
  });
}

function acrossRead(line: Line, side: Measure<Length>, acrossCloth: Range): SizeRead {
  return read({
    fields: { ...valueAs("width", side), height: line.clothWidth },
    parts: [
      { is: "width", ...rangeOf(side) },
      { is: "cloth-width", ...rangeOf(acrossCloth) },
    ],
    problems: sideProblems(line, "width", side),
  });
}

/** Kinds that people give by one measure. */
function hasOneMeasure(kind: Kind | null): boolean {
  return kind === "square" || kind === "block" || kind === "triangle" || kind === "half-square-triangle";
}
