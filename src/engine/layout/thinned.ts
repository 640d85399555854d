import type { Stock } from "./stock.ts";
import { type Fork, type Twig, twigsFor } from "./twig.ts";

/**
 * Keeps within her time: while there are too many cells, the place where most cells cover least becomes plain cloth.
 * The search avoids this by its cost; this makes sure.
 */
export function thinned(twigs: readonly Twig[], stock: Stock, mostLeaves: number): readonly Twig[] {
  let whole = [...twigs];
  const room = stock.clothRoom;
  while (cellsIn(whole, room) > mostLeaves) {
    const victim = poorest(whole, room);
    if (victim === null) return whole;
    whole = whole.map((twig) => without(twig, victim, stock));
  }
  return whole;
}

/** Sewn pairs and pieces with coping strips are several; cloth too wide for the bolt is sewn from several widths. */
function cellsIn(twigs: readonly Twig[], room: number): number {
  return twigs.reduce((sum, twig) => sum + cellsOf(twig, room), 0);
}

function cellsOf(twig: Twig, room: number): number {
  if (twig.kind === "fork") return cellsIn(twig.parts, room);
  if (twig.face !== null) return twig.face.lot.cells;
  const long = Math.max(twig.width, twig.height);
  return Math.min(twig.width, twig.height) <= room ? 1 : Math.ceil(long / room);
}

/** The fork of leaves alone that covers least for each cell it would save. */
function poorest(twigs: readonly Twig[], room: number): Fork | null {
  let worst: Fork | null = null;
  let least = Number.POSITIVE_INFINITY;
  const look = (twig: Twig): void => {
    if (twig.kind === "leaf") return;
    if (twig.parts.some((part) => part.kind === "fork")) {
      for (const part of twig.parts) look(part);
      return;
    }
    const share = coveredIn(twig) / (cellsOf(twig, room) - 1);
    if (share < least) {
      least = share;
      worst = twig;
    }
  };
  for (const twig of twigs) look(twig);
  return worst;
}

/** Finished area of leftovers, in steps². */
export function coveredIn(twig: Twig): number {
  if (twig.kind === "fork") return twig.parts.reduce((sum, part) => sum + coveredIn(part), 0);
  return twig.face === null ? 0 : twig.width * twig.height;
}

function without(twig: Twig, victim: Fork, stock: Stock): Twig {
  const mill = twigsFor(stock);
  if (twig === victim) return mill.cloth(twig.width, twig.height);
  if (twig.kind === "leaf") return twig;
  return mill.join(
    twig.beside,
    twig.parts.map((part) => without(part, victim, stock)),
  );
}
