import { type ClothCut, type CutPlace, cutFrom, cutsOf, type Remain } from "../back/index.ts";
import type { Job, SizedPiece } from "../cloth/index.ts";
import type { ClothSource, LayoutNode, Path } from "../layout/index.ts";
import { add, assert, type Length, length, subtract } from "../length/index.ts";
import { type Bought, boughtByFabric, untrueEnd } from "./buy-rows.ts";
import { sheetsOf } from "./source-cloth.ts";
import { usableLengths, type Want, wantsOf } from "./wants.ts";

/** What is cut from one cloth: x across it, y along its height, from its upper left corner. */
export type CutCloth = {
  readonly source: ClothSource;
  readonly fabric: string;
  readonly width: Length;
  readonly height: Length;
  readonly cells: readonly ClothCell[];
  /** From edge to edge of what is left each time, in order. */
  readonly cuts: readonly ClothCut[];
  /** What goes back to the shelf: at least 2 by 5 in. */
  readonly remains: readonly Remain[];
};

/** A rectangle on its cloth and the cell or unit it is for. */
export type ClothCell = Omit<CutPlace, "key"> & { readonly path: Path };

/**
 * What to cut from each of her lengths that is used and from each cloth to buy. The layout's cloth must have its
 * sources (`sourceCloth`). Throws when a source cannot give what is wanted from it.
 */
export function cuttingPlan(layout: LayoutNode, job: Job): readonly CutCloth[] {
  return [...fromLengths(layout, job), ...fromBolts(layout, job)];
}

function fromLengths(layout: LayoutNode, job: Job): readonly CutCloth[] {
  const wants = wantsOf(layout, job);
  return usableLengths(job)
    .toSorted((a, b) => job.pieces.indexOf(a) - job.pieces.indexOf(b))
    .flatMap((piece) => sheetsOf(piece).flatMap((sheet) => fromLength(piece, sheet, wants)));
}

type Sheet = ReturnType<typeof sheetsOf>[number];

function fromLength(piece: SizedPiece, sheet: Sheet, all: readonly Want[]): readonly CutCloth[] {
  const wants = all.filter(
    ({ source }) => source !== "buy" && source.piece === sheet.id && source.copy === sheet.copy,
  );
  if (wants.length === 0) return [];
  const places = cutFrom(
    [sheet],
    wants.map(({ width, height }, key) => ({ key, width, height })),
  );
  return [
    {
      source: { piece: sheet.id, copy: sheet.copy },
      fabric: piece.fabric,
      width: sheet.width,
      height: sheet.height,
      cells: cellsOf(places, wants),
      ...cutsOf(
        sheet,
        places.filter((place) => place !== null),
      ),
    },
  ];
}

function cellsOf(places: readonly (CutPlace | null)[], wants: readonly Want[]): readonly ClothCell[] {
  return wants.map(({ path }, index) => {
    const place = places[index] ?? null;
    assert(place !== null, "a length gives every cell that is cut from it");
    const { x, y, width, height, turned } = place;
    return { path, x, y, width, height, turned };
  });
}

function fromBolts(layout: LayoutNode, job: Job): readonly CutCloth[] {
  return boughtByFabric(layout, job).map((bought) => fromBolt(bought, job));
}

function fromBolt({ fabric, wants, places, length: bought }: Bought, job: Job): CutCloth {
  const trued = { width: job.clothWidth, height: subtract(bought, untrueEnd) };
  const { cuts, remains } = cutsOf(trued, places);
  const first: ClothCut = { way: "across", at: untrueEnd, from: length(0), to: job.clothWidth };
  return {
    source: "buy",
    fabric,
    width: job.clothWidth,
    height: bought,
    cells: cellsOf(places, wants).map((cell) => ({ ...cell, y: add(cell.y, untrueEnd) })),
    cuts: [first, ...cuts.map(furtherDown)],
    remains: remains.map((remain) => ({ ...remain, y: add(remain.y, untrueEnd) })),
  };
}

function furtherDown(cut: ClothCut): ClothCut {
  if (cut.way === "across") return { ...cut, at: add(cut.at, untrueEnd) };
  return { ...cut, from: add(cut.from, untrueEnd), to: add(cut.to, untrueEnd) };
}
