import type { Kind } from "../cloth/index.ts";
import type { Length, Size } from "../length/index.ts";
import type { Drawing, Patch, Point, Rect, Shape } from "./types.ts";

/**
 * Turns and moves what is drawn on a leftover into the drawing, where both are in lengths: `[a, b, c, d, e, f]` as SVG
 * has it. Never scales and never mirrors.
 */
export type Turn = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** A leftover's cloth where a patch shows some of it. */
export type LyingCloth = {
  readonly piece: string;
  readonly kind: Kind;
  /** What shows of it. */
  readonly outline: readonly Point[];
  /** Its cut size, upright. A triangle has its right angle at the lower left. */
  readonly size: Size;
  /** Of the leftover, from its own upper left corner. */
  readonly turn: Turn;
};

type LyingPiece = { readonly id: string; readonly kind: Kind } & Partial<Size>;

/**
 * How each leftover lies in the drawing, trimmed alike on opposite sides; what is cut from one strip follows along it.
 * Not told: what is already sewn of two triangles, whose diagonal nobody named, and what is sewn by eye. `seam`: what
 * each cell's cut size is larger on every side.
 */
export function lyingCloth(
  { shapes, edges }: Drawing,
  pieces: readonly LyingPiece[],
  seam: Length,
): readonly LyingCloth[] {
  const known = new Map(pieces.map((piece) => [piece.id, piece]));
  const taken = new Map<string, number>();
  return shapes.flatMap((shape) =>
    shape.patches.flatMap((patch) => {
      const piece = known.get(patch.piece ?? "");
      const size = piece && sizeOf(piece);
      if (piece === undefined || size === null || size === undefined) return [];
      const turn =
        piece.kind === "triangle"
          ? triangleTurn(patch.outline, size)
          : turnOf({ shape, patch, size }, { seam, edges, taken });
      const cloth = { piece: piece.id, kind: piece.kind, outline: patch.outline, size };
      return turn === null ? [] : [{ ...cloth, turn }];
    }),
  );
}

function sizeOf({ kind, width, height }: LyingPiece): Size | null {
  const isTold = kind !== "half-square-triangle" && kind !== "crumbs";
  return isTold && width !== undefined && height !== undefined ? { width, height } : null;
}

type Lies = { readonly shape: Shape; readonly patch: Patch; readonly size: Size };
type Strips = {
  readonly seam: Length;
  readonly edges: readonly Rect[];
  /** How much of each strip is taken by the cells so far. */
  readonly taken: Map<string, number>;
};

function turnOf({ shape, patch, size }: Lies, strips: Strips): Turn | null {
  const [first, second, third] = patch.outline;
  if (patch.outline.length !== 4 || !first || !second || !third) return null;
  const across = { x: second.x - first.x, y: second.y - first.y };
  const [wide, tall] = [Math.hypot(across.x, across.y), Math.hypot(third.x - second.x, third.y - second.y)];
  const isTurned = shape.turned ?? wide > tall !== size.width > size.height;
  const [x, y] = [across.x / wide, across.y / wide];
  const way = isTurned ? ([-y, x] as const) : ([x, y] as const);
  const shown = isTurned ? { width: tall, height: wide } : { width: wide, height: tall };
  const isTall = size.height >= size.width;
  const along = alongStrip(shape, isTall ? [-way[1], way[0]] : way, strips);
  return moved(way, ownMiddle(size, shown, along), middleOf(patch.outline));
}

/**
 * How far along a strip that gives several cells this one begins to show; null: it gives this one alone. `way`: where
 * the strip runs in the drawing. Between two parts a seam's allowance lies behind, at a raw edge it shows.
 */
function alongStrip(
  shape: Shape,
  [x, y]: readonly [number, number],
  { seam, edges, taken }: Strips,
): number | null {
  if (!("piece" in shape.label) || shape.label.copy === undefined) return null;
  const strip = `${shape.label.piece} ${shape.label.copy}`;
  const from = taken.get(strip) ?? 0;
  const [low, high] = Math.abs(x) > Math.abs(y) ? rawEnds(shape, edges, "x") : rawEnds(shape, edges, "y");
  const side = Math.abs(x) > Math.abs(y) ? shape.width : shape.height;
  const [isRawFirst, isRawLast] = x + y > 0 ? [low, high] : [high, low];
  const begins = from + (isRawFirst ? 0 : seam);
  taken.set(strip, begins + side + (isRawLast ? 0 : seam));
  return begins;
}

/** Whether a cell reaches to the raw edge where `axis` begins and where it ends. */
function rawEnds(shape: Shape, edges: readonly Rect[], axis: "x" | "y"): readonly [boolean, boolean] {
  const side = axis === "x" ? "width" : "height";
  const round = edges.find((edge) => isWithin(shape, edge));
  if (round === undefined) return [false, false];
  return [shape[axis] === round[axis], shape[axis] + shape[side] === round[axis] + round[side]];
}

function isWithin(inner: Rect, outer: Rect): boolean {
  const fits = (axis: "x" | "y", side: "width" | "height") =>
    inner[axis] >= outer[axis] && inner[axis] + inner[side] <= outer[axis] + outer[side];
  return fits("x", "width") && fits("y", "height");
}

/** What lies in the middle of the patch, on the leftover: its own middle, save along a strip. */
function ownMiddle({ width, height }: Size, shown: { width: number; height: number }, along: number | null) {
  if (along === null) return { x: width / 2, y: height / 2 };
  return height >= width
    ? { x: width / 2, y: along + shown.height / 2 }
    : { x: along + shown.width / 2, y: height / 2 };
}

type Spot = { readonly x: number; readonly y: number };

/** The turn that brings the leftover's way across onto the direction `[x, y]`, and its spot `own` onto `onto`. */
function moved([x, y]: readonly [number, number], own: Spot, onto: Spot): Turn {
  return [x, y, -y, x, onto.x - (x * own.x - y * own.y), onto.y - (y * own.x + x * own.y)];
}

function middleOf(outline: readonly Point[]): Spot {
  const mean = (axis: "x" | "y") => outline.reduce((sum, point) => sum + point[axis], 0) / outline.length;
  return { x: mean("x"), y: mean("y") };
}

/** Its right angle on the patch's; moved in by the same on all three sides, a triangle shrinks about its incircle. */
function triangleTurn(outline: readonly Point[], { width, height }: Size): Turn | null {
  const [a, b, c] = outline;
  if (outline.length !== 3 || !a || !b || !c) return null;
  const [corner, one, other] = squareFirst(a, b, c);
  // Seen from the right angle, the way across comes clockwise after the way up.
  const isClockwise =
    (one.x - corner.x) * (other.y - corner.y) - (one.y - corner.y) * (other.x - corner.x) < 0;
  const across = isClockwise ? one : other;
  const long = Math.hypot(across.x - corner.x, across.y - corner.y);
  const radius = (width + height - Math.hypot(width, height)) / 2;
  const way = [(across.x - corner.x) / long, (across.y - corner.y) / long] as const;
  return moved(way, { x: radius, y: height - radius }, incentreOf([a, b, c]));
}

type Three = readonly [Point, Point, Point];

/** With the corner whose angle is the widest in front. */
function squareFirst(a: Point, b: Point, c: Point): Three {
  const facing = [far(b, c), far(c, a), far(a, b)];
  const widest = facing.indexOf(Math.max(...facing));
  const turns: readonly Three[] = [
    [a, b, c],
    [b, c, a],
    [c, a, b],
  ];
  return turns[widest] ?? [a, b, c];
}

function incentreOf([a, b, c]: Three): Spot {
  const [p, q, r] = [far(b, c), far(c, a), far(a, b)];
  const mean = (axis: "x" | "y") => (p * a[axis] + q * b[axis] + r * c[axis]) / (p + q + r);
  return { x: mean("x"), y: mean("y") };
}

function far(one: Spot, other: Spot): number {
  return Math.hypot(one.x - other.x, one.y - other.y);
}
