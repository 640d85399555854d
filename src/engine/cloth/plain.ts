import type { Draft } from "./draft.ts";
import { fabricOf, isUndyed, plainId } from "./fabrics.ts";
import { heapArea } from "./piles.ts";
import type { Fabric, Piece } from "./types.ts";

const unbleached = "#e9e1d0";
const inkGrey = "#4a5460";
/** Unbleached cloth is about L* 90: from here on the heap would drown in it. */
const paleHeap = 72;

/** The plain cloth to buy. Without a colour of hers it takes one that sets the heap off. */
export function plainFabric(
  draft: Draft,
  pieces: readonly Piece[],
  fabrics: readonly Fabric[],
): Fabric | null {
  const colour = draft.plain.colour?.trim() || settingOff(pieces, fabrics);
  return fabricOf(plainId, draft.plain.name.trim(), colour);
}

/**
 * Unbleached lets most heaps glow; a heap that is pale itself (mean L* over 72) shows up on ink grey. Her lengths don't
 * count: they are plain cloth themselves, and what is bought lies beside them.
 */
export function settingOff(pieces: readonly Piece[], fabrics: readonly Fabric[]): string {
  const scraps = pieces.filter(({ kind }) => kind !== "length");
  const value = meanValue(scraps, fabrics);
  return value !== null && value > paleHeap ? inkGrey : unbleached;
}

/** Mean L* of the heap, each piece weighted by its cut area; null when no colour is known. */
export function meanValue(pieces: readonly Piece[], fabrics: readonly Fabric[]): number | null {
  const values = new Map(
    fabrics.filter((fabric) => !isUndyed(fabric)).map((fabric) => [fabric.id, fabricValue(fabric)]),
  );
  let [weighted, total] = [0, 0];
  for (const piece of pieces) {
    const value = values.get(piece.fabric);
    if (value === undefined) continue;
    const area = heapArea(piece);
    weighted += value * area;
    total += area;
  }
  return total > 0 ? weighted / total : null;
}

/** What quilters call a fabric's value: the L* of its colours, each by its share. */
export function fabricValue(fabric: Fabric): number {
  return fabric.colours.reduce((value, { lab, share }) => value + lab.l * share, 0);
}
