import type { Face, Lot, Stock } from "./stock.ts";

/** A face as it lies in a row: how long it makes the row, how thick. */
export type Lie = {
  readonly face: Face;
  readonly lot: Lot;
  readonly along: number;
  readonly leastAlong: number;
  readonly across: number;
  readonly leastAcross: number;
  readonly freeAlong: boolean;
};

/** Faces found by the thickness they can have in a row, so that a search need not look at all of them. */
export type Lies = {
  /** Pieces whose thickness can be this, by an allowed trim at most. */
  readonly firm: (thickness: number) => readonly Lie[];
  /** Strips that lie across the row and are cut to its thickness. */
  readonly loose: readonly Lie[];
  /** The ways one lot can lie, those that are cut to the row's thickness apart; by the lot's index. */
  readonly ofLots: readonly LiesOfLot[];
};

export type LiesOfLot = { readonly firm: readonly Lie[]; readonly loose: readonly Lie[] };

/** `beside`: the row runs left to right. */
export function liesOf({ lots }: Stock, faces: readonly Face[], beside: boolean): Lies {
  const loose: Lie[] = [];
  const firm: Lie[] = [];
  const ofLots = lots.map((): { firm: Lie[]; loose: Lie[] } => ({ firm: [], loose: [] }));
  for (const face of faces) {
    const isLoose = face.along === (beside ? "height" : "width");
    const lie = beside ? lying(face) : standing(face);
    (isLoose ? loose : firm).push(lie);
    ofLots[face.lot.index]?.[isLoose ? "loose" : "firm"].push(lie);
  }
  const found = new Map<number, readonly Lie[]>();
  return { loose, ofLots, firm: (thickness) => remembered(found, firm, thickness) };
}

function lying(face: Face): Lie {
  return {
    face,
    lot: face.lot,
    along: face.maxWidth,
    leastAlong: face.minWidth,
    across: face.maxHeight,
    leastAcross: face.minHeight,
    freeAlong: face.along === "width",
  };
}

function standing(face: Face): Lie {
  return {
    face,
    lot: face.lot,
    along: face.maxHeight,
    leastAlong: face.minHeight,
    across: face.maxWidth,
    leastAcross: face.minWidth,
    freeAlong: face.along === "height",
  };
}

function remembered(
  found: Map<number, readonly Lie[]>,
  firm: readonly Lie[],
  thickness: number,
): readonly Lie[] {
  const before = found.get(thickness);
  if (before !== undefined) return before;
  const fitting = firm.filter((lie) => lie.leastAcross <= thickness && thickness <= lie.across);
  found.set(thickness, fitting);
  return fitting;
}
