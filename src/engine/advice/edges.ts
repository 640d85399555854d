import { colourDifference, type Fabric, type Lab } from "../cloth/index.ts";
import { isCloth, type Scene } from "./scene.ts";

/** Told apart across a room: in value, or else in colour. Ours, as no threshold for cloth is published. */
const apartInValue = 10;
/** CIEDE2000. */
const apartInColour = 20;

export function areApart(one: Lab, other: Lab): boolean {
  return Math.abs(one.l - other.l) >= apartInValue || colourDifference(one, other) >= apartInColour;
}

/** The colour that leads in a fabric. */
export function leading({ colours }: Fabric): Lab | null {
  return colours[0]?.lab ?? null;
}

export type Edge = { readonly one: number; readonly other: number; readonly long: number };

/**
 * Cells with their fabrics as numbers, so that fabrics can change places. Plain cloth beside plain cloth is meant so,
 * and of cloth without a known colour nothing can be said: neither is an edge here.
 */
export type Edges = {
  readonly edges: readonly Edge[];
  /** By cell. */
  readonly edgesOf: readonly (readonly Edge[])[];
  /** Fabric of each cell, by its place in `labs`; −1 where its colour isn't known. */
  readonly fabrics: readonly number[];
  readonly labs: readonly Lab[];
  readonly apart: readonly (readonly boolean[])[];
  /** How long all edges are. */
  readonly total: number;
};

export function edgesOf({ cells, meetings }: Scene): Edges {
  const ids = [...new Set(cells.flatMap(({ fabric }) => (fabric === null ? [] : [fabric])))];
  const known = ids.flatMap((fabric) => {
    const lab = leading(fabric);
    return lab === null ? [] : [{ id: fabric.id, lab }];
  });
  const labs = known.map(({ lab }) => lab);
  const fabrics = cells.map(({ fabric }) => known.findIndex(({ id }) => id === fabric?.id));
  const edges = meetings.filter(({ one, other }) => {
    const [cell, next] = [cells[one], cells[other]];
    if (cell === undefined || next === undefined || one === other) return false;
    return fabrics[one] !== -1 && fabrics[other] !== -1 && !(isCloth(cell) && isCloth(next));
  });
  return {
    edges,
    edgesOf: byCell(edges, cells.length),
    fabrics,
    labs,
    apart: labs.map((lab, one) => labs.map((next, other) => one !== other && areApart(lab, next))),
    total: edges.reduce((sum, { long }) => sum + long, 0),
  };
}

function byCell(edges: readonly Edge[], cells: number): readonly (readonly Edge[])[] {
  const found: Edge[][] = Array.from({ length: cells }, () => []);
  for (const edge of edges) {
    found[edge.one]?.push(edge);
    found[edge.other]?.push(edge);
  }
  return found;
}

/** Whether the fabrics of two cells are told apart, with `fabrics` in them. */
export function isGood({ apart }: Edges, fabrics: readonly number[], { one, other }: Edge): boolean {
  return apart[fabrics[one] ?? -1]?.[fabrics[other] ?? -1] ?? false;
}

/** Share of the edges whose fabrics are told apart. */
export function goodShare(known: Edges, fabrics: readonly number[] = known.fabrics): number {
  const good = known.edges.reduce((sum, edge) => sum + (isGood(known, fabrics, edge) ? edge.long : 0), 0);
  return known.total === 0 ? 1 : good / known.total;
}
