import { type Area, area, areaOf, inches, type Length } from "../length/index.ts";
import { cutArea } from "./shape.ts";
import type { Piece, SizedPiece } from "./types.ts";

export const pileNames = ["strips", "blocks", "triangles", "small", "large"] as const;
export type PileName = (typeof pileNames)[number];

/** Below either of them a piece that is no strip, block or triangle is small. Cut sizes. */
export type PileLimits = { readonly area: Area; readonly side: Length };

/** Smaller than a hand, or narrower than the strips people cut to keep: common practice, hers to change. */
export const defaultPileLimits: PileLimits = { area: area(inches(6), inches(6)), side: inches(7, 2) };

export type Piles = Readonly<Record<PileName, readonly Piece[]>>;

/** Sorts the heap as a quilter does on the table; every piece lies in one pile, in the order of the heap. */
export function pilesOf(pieces: readonly Piece[], limits: PileLimits = defaultPileLimits): Piles {
  const pile = (name: PileName) => pieces.filter((piece) => pileOf(piece, limits) === name);
  return {
    strips: pile("strips"),
    blocks: pile("blocks"),
    triangles: pile("triangles"),
    small: pile("small"),
    large: pile("large"),
  };
}

export function pileOf(piece: Piece, limits: PileLimits = defaultPileLimits): PileName {
  switch (piece.kind) {
    case "strip":
      return "strips";
    case "block":
    case "part-block":
      return "blocks";
    case "triangle":
    case "half-square-triangle":
      return "triangles";
    case "crumbs":
      return "small";
    case "length":
      return "large";
    case "square":
    case "rectangle":
    case "odd":
      return isSmall(piece, limits) ? "small" : "large";
  }
}

function isSmall(piece: SizedPiece, limits: PileLimits): boolean {
  return cutArea(piece) < limits.area || Math.min(piece.width, piece.height) < limits.side;
}

/** How much cloth a row of the heap is, as cut: all its pieces together. */
export function heapArea(piece: Piece): Area {
  return piece.kind === "crumbs" ? piece.area : areaOf(cutArea(piece) * piece.count);
}

/** How much there is of each fabric, by its id, as cut; most first. */
export function areaByFabric(pieces: readonly Piece[]): ReadonlyMap<string, Area> {
  const areas = new Map<string, Area>();
  for (const piece of pieces) {
    areas.set(piece.fabric, areaOf((areas.get(piece.fabric) ?? 0) + heapArea(piece)));
  }
  return new Map([...areas].sort(([, one], [, other]) => other - one));
}
