import type { ClothRole } from "./region.ts";
import type { Site } from "./site.ts";

/** A style's composition while it is being made: in whole steps, plain cloth without its fabric yet. */
export type Sketch = SketchJoin | SketchCloth | SketchPieced | SketchBlock | SketchOnPoint;

type Cell = { readonly width: number; readonly height: number };
export type SketchJoin = Cell & {
  readonly kind: "join";
  readonly beside: boolean;
  readonly parts: readonly Sketch[];
};
/** `tone`: 0 is the main plain cloth; another tone takes another fabric where she has one. */
export type SketchCloth = Cell & { readonly kind: "cloth"; readonly role: ClothRole; readonly tone: number };
export type SketchPieced = Cell & { readonly kind: "pieced" };
/** Equal square blocks on their points, along its longer side. */
export type SketchOnPoint = Cell & { readonly kind: "on-point"; readonly blocks: readonly string[] };
export type SketchBlock = Cell & { readonly kind: "block"; readonly piece: string; readonly turned: boolean };

export function cloth(width: number, height: number, role: ClothRole = "plain", tone = 0): SketchCloth {
  return { kind: "cloth", role, tone, width, height };
}

export function pieced(width: number, height: number): SketchPieced {
  return { kind: "pieced", width, height };
}

/** Left to right. Parts of no width are left out. */
export function beside(parts: readonly Sketch[]): Sketch {
  return joined(true, parts);
}

/** Top to bottom. */
export function below(parts: readonly Sketch[]): Sketch {
  return joined(false, parts);
}

function joined(side: boolean, parts: readonly Sketch[]): Sketch {
  const real = parts.filter((part) => part.width > 0 && part.height > 0);
  const first = real[0];
  if (first === undefined) return { kind: "join", beside: side, parts: [], width: 0, height: 0 };
  if (real.length === 1) return first;
  const along = real.reduce((sum, part) => sum + (side ? part.width : part.height), 0);
  const size = side ? { width: along, height: first.height } : { width: first.width, height: along };
  return { kind: "join", beside: side, parts: real, ...size };
}

/** The sketch lying on its side again. */
export function turnedSketch(sketch: Sketch): Sketch {
  const size = { width: sketch.height, height: sketch.width };
  if (sketch.kind === "join") {
    return { ...sketch, ...size, beside: !sketch.beside, parts: sketch.parts.map(turnedSketch) };
  }
  if (sketch.kind === "block") return { ...sketch, ...size, turned: !sketch.turned };
  return { ...sketch, ...size };
}

/** A pieced row across the back: its ends, which will be cut away, are plain. */
export function row(site: Site, height: number, width = site.width): Sketch {
  const cap = site.ringX;
  return beside([
    cloth(cap, height, "spacer"),
    pieced(width - 2 * cap, height),
    cloth(cap, height, "spacer"),
  ]);
}

/** A core with the plain ring round it that will be cut away. What is too little for both sides goes to one. */
export function ringed(site: Site, core: Sketch): Sketch {
  const [left, right] = sides(site, site.width - core.width);
  const [above, under] = sides(site, site.height - core.height);
  const middle = beside([cloth(left, core.height, "spacer"), core, cloth(right, core.height, "spacer")]);
  return below([cloth(site.width, above, "spacer"), middle, cloth(site.width, under, "spacer")]);
}

function sides(site: Site, rest: number): readonly [number, number] {
  const one = Math.floor(rest / 2);
  return one < site.inch ? [0, rest] : [one, rest - one];
}
