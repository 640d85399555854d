import { add, type Length, length, subtract } from "../length/index.ts";
import { type Marker, type Point, papers, type ReferencePage, referencePages } from "./pages.ts";

/** What lies on the floor as one flat piece of paper: a card with one marker, or a sheet with four. */
export type Target = {
  readonly kind: "card" | "sheet";
  readonly markers: readonly TargetMarker[];
  /** How far the paper reaches from its middle. Letter, the shorter and wider of the two papers, where it isn't known. */
  readonly reach: { readonly across: Length; readonly down: Length };
};

/** A marker's corners from the middle of its paper, clockwise from the upper left. */
export type TargetMarker = { readonly id: number; readonly corners: readonly Point[] };

/** Every card and sheet there is. They lie alike on both papers, so that a photo need not know which it was. */
export const targets: readonly Target[] = targetsOf(papers[0]);

function targetsOf(paper: (typeof papers)[number]): readonly Target[] {
  return referencePages(paper).flatMap((page) =>
    page.kind === "sheet" ? [sheetTarget(page)] : page.markers.map((marker) => cardTarget(page, marker)),
  );
}

function sheetTarget({ size, markers }: ReferencePage): Target {
  const reach = { across: length(size.width / 2), down: length(size.height / 2) };
  const middle = { x: reach.across, y: reach.down };
  return { kind: "sheet", reach, markers: markers.map((marker) => fromMiddle(marker, middle)) };
}

function cardTarget({ size }: ReferencePage, marker: Marker): Target {
  const reach = { across: length(size.width / 4), down: length(size.height / 4) };
  const half = length(marker.side / 2);
  const middle = { x: add(marker.x, half), y: add(marker.y, half) };
  return { kind: "card", reach, markers: [fromMiddle(marker, middle)] };
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
