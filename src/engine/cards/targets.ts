import { add, type Length, larger, length, subtract } from "../length/index.ts";
import { type Marker, type Point, papers, type ReferencePage, referencePages } from "./pages.ts";

/** What lies on the floor as one flat piece of paper: a card with one marker, or a sheet with four. */
export type Target = {
  readonly kind: "card" | "sheet";
  readonly markers: readonly TargetMarker[];
  /** How far the paper reaches from its middle, on the one or the other paper. */
  readonly reach: Offset;
};

type Offset = { readonly across: Length; readonly down: Length };

/** A marker's corners from the middle of its paper, clockwise from the upper left. */
export type TargetMarker = { readonly id: number; readonly corners: readonly Point[] };

/** Every card and sheet there is. Markers lie alike on both papers, so that a photo need not know which it was. */
export const targets: readonly Target[] = referencePages(papers[0]).flatMap((page) =>
  page.kind === "sheet" ? [sheetTarget(page)] : page.markers.map((marker) => cardTarget(marker)),
);

function sheetTarget({ size, markers }: ReferencePage): Target {
  const middle = { x: length(size.width / 2), y: length(size.height / 2) };
  return {
    kind: "sheet",
    reach: reachOf("sheet"),
    markers: markers.map((marker) => fromMiddle(marker, middle)),
  };
}

function cardTarget(marker: Marker): Target {
  const half = length(marker.side / 2);
  const middle = { x: add(marker.x, half), y: add(marker.y, half) };
  // However the marker is turned on its card.
  const { across, down } = reachOf("cards");
  const reach = larger(across, down);
  return { kind: "card", reach: { across: reach, down: reach }, markers: [fromMiddle(marker, middle)] };
}

/** Half of a sheet or a card, of the larger of all papers. */
function reachOf(kind: ReferencePage["kind"]): Offset {
  const pages = papers.flatMap((paper) => referencePages(paper)).filter((page) => page.kind === kind);
  const parts = kind === "cards" ? 4 : 2;
  const most = (sides: readonly Length[]) =>
    length(sides.reduce<number>((most, side) => Math.max(most, side), 0) / parts);
  const sizes = pages.map(({ size }) => size);
  return { across: most(sizes.map(({ width }) => width)), down: most(sizes.map(({ height }) => height)) };
}

function fromMiddle({ id, x, y, side }: Marker, middle: Point): TargetMarker {
  const [left, top] = [subtract(x, middle.x), subtract(y, middle.y)];
  const [right, bottom] = [add(left, side), add(top, side)];
  return {
    id,
    corners: [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: bottom },
      { x: left, y: bottom },
    ],
  };
}
