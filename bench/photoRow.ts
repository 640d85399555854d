import { colourDifference, type Lab } from "../src/engine/cloth/index.ts";
import type { MeasuredPhoto, MeasuredPiece } from "../src/photo/index.ts";
import { isInside } from "../test/made/scene.ts";
import type { Known, Place, TrueOutline } from "./photoTruth.ts";

/** One photograph, measured, beside its truth. */
export type PhotoRow = {
  readonly name: string;
  readonly group: string;
  readonly floor: string;
  readonly tone: "linear" | "phone";
  readonly markers: number;
  readonly markersFound: number;
  readonly falseIds: number;
  readonly residual: number | null;
  readonly warnings: readonly string[];
  /** Of the processor, all threads. */
  readonly seconds: number;
  readonly pieces: readonly PieceRow[];
  /** What was found where no piece lies. */
  readonly wrong: readonly WrongRow[];
};

export type PieceRow = {
  readonly type: string;
  readonly print: string;
  readonly contrast: number;
  readonly touches: boolean;
  readonly found: FoundRow | null;
};

export type FoundRow = {
  readonly kind: string;
  readonly fits: boolean;
  /** Each side's measured size less the true one, and the stated size less the true one, inches. */
  readonly off: readonly number[];
  readonly over: readonly number[];
  /** ΔE00 of the mean of its light to the true one. */
  readonly colour: number;
  readonly check: readonly string[];
};

export type WrongRow = {
  readonly kind: string;
  readonly size: readonly number[];
  readonly at: readonly number[];
  readonly check: readonly string[];
};

const overlaps = 0.8;

export function rowOf(known: Known, measured: MeasuredPhoto, seconds: number): PhotoRow {
  const { name, group, floor, tone, markers } = known;
  const { cards, residual, warnings } = measured;
  const used = new Set<MeasuredPiece>();
  const pieces = known.pieces.map((truth): PieceRow => {
    const { type, print, contrast, touches, outline } = truth;
    const found = measured.pieces.find(({ pixels }) => overlapShare(pixels, outline) > overlaps);
    if (found) used.add(found);
    return {
      type,
      print,
      contrast: rounded(contrast, 1),
      touches,
      found: found ? foundRow(truth, found) : null,
    };
  });
  return {
    name,
    group,
    floor,
    tone,
    markers: markers.length,
    markersFound: markers.filter((id) => cards.includes(id)).length,
    falseIds: cards.filter((id) => !markers.includes(id)).length,
    residual: residual === null ? null : rounded(residual, 2),
    warnings,
    seconds: rounded(seconds, 2),
    pieces,
    wrong: measured.pieces.filter((piece) => !used.has(piece)).map(wrongRow),
  };
}

function foundRow(truth: TrueOutline, piece: MeasuredPiece): FoundRow {
  const { kind, measured, width, height, check } = piece;
  const fits = kindFits(truth.type, kind);
  const less = (sizes: readonly number[]) =>
    fits && kind !== "odd"
      ? sizes
          .toSorted((one, other) => one - other)
          .map((size, at) => rounded(size - (truth.sizes[at] ?? size), 4))
      : [];
  return {
    kind,
    fits,
    off: less([measured.width, measured.height]),
    over: less([width, height]),
    colour: rounded(colourDifference(meanColour(piece), truth.lab), 2),
    check,
  };
}

function wrongRow({ kind, measured, pixels, check }: MeasuredPiece): WrongRow {
  const mean = (axis: 0 | 1) => pixels.reduce((sum, place) => sum + place[axis], 0) / pixels.length;
  return {
    kind,
    size: [rounded(measured.width, 2), rounded(measured.height, 2)],
    at: [Math.round(mean(0)), Math.round(mean(1))],
    check,
  };
}

function kindFits(type: string, kind: string): boolean {
  if (type === "triangle") return kind === "triangle";
  if (type === "quad") return kind === "odd";
  return kind !== "odd" && kind !== "triangle";
}

/** The area both share, as a share of the area either covers, counted on a grid. */
export function overlapShare(one: readonly Place[], other: readonly Place[]): number {
  const range = (axis: 0 | 1) => {
    const values = [...one, ...other].map((place) => place[axis]);
    return [Math.min(...values), Math.max(...values)] as const;
  };
  const [[left, right], [top, bottom]] = [range(0), range(1)];
  if (!rangesMeet(one, other)) return 0;
  let [both, either] = [0, 0];
  for (let row = 0; row < 80; row += 1)
    for (let column = 0; column < 80; column += 1) {
      const at: Place = [
        left + ((column + 0.5) / 80) * (right - left),
        top + ((row + 0.5) / 80) * (bottom - top),
      ];
      const [a, b] = [isInside(one, at), isInside(other, at)];
      both += Number(a && b);
      either += Number(a || b);
    }
  return both / Math.max(1, either);
}

function rangesMeet(one: readonly Place[], other: readonly Place[]): boolean {
  return ([0, 1] as const).every((axis) => {
    const [a, b] = [one.map((place) => place[axis]), other.map((place) => place[axis])];
    return Math.max(...a) > Math.min(...b) && Math.max(...b) > Math.min(...a);
  });
}

/** In linear light, as the truth's mean is; light by CIE 15 under D65. */
function meanColour({ colours }: MeasuredPiece): Lab {
  const inverse = (value: number) => (value > 6 / 29 ? value ** 3 : 3 * (6 / 29) ** 2 * (value - 4 / 29));
  const root = (value: number) =>
    value > (6 / 29) ** 3 ? Math.cbrt(value) : value / (3 * (6 / 29) ** 2) + 4 / 29;
  let [sumX, sumY, sumZ] = [0, 0, 0];
  for (const { lab, share } of colours) {
    const y = (lab.l + 16) / 116;
    sumX += share * inverse(y + lab.a / 500);
    sumY += share * inverse(y);
    sumZ += share * inverse(y - lab.b / 200);
  }
  const [x, y, z] = [root(sumX), root(sumY), root(sumZ)];
  return { l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits)) + 0;
}
