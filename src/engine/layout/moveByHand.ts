import type { Job } from "../cloth/index.ts";
import { type Length, length } from "../length/index.ts";
import { givingOrder, type InRow, inRowAlong, type Room, resized, roomOf, shared } from "./giveAndTake.ts";
import type { Side } from "./problems.ts";
import type { LayoutNode } from "./types.ts";
import type { Path } from "./walk.ts";

/**
 * A part changes its place or its size within the row or column that it lies in, along the side in which that runs.
 * `by`: whole steps of the ruler, to the right or down, or longer; below 0 the other way.
 */
export type Shift = {
  /** `move`: what lies on one side of it gives what the other side takes. `resize`: what lies in its row does. */
  readonly kind: "move" | "resize";
  readonly at: Path;
  readonly along: Side;
  readonly by: Length;
};

/** Why nothing can shift so. */
export type NoShift =
  /** Sizes go by the ruler's step. */
  | { readonly kind: "off-ruler"; readonly step: Length }
  /** There is nothing on one side of it that could give or take. */
  | { readonly kind: "at-the-end" }
  /** What lies beside it can give or take no more than `most`. */
  | { readonly kind: "no-room"; readonly most: Length }
  /** What it is sewn from can become longer or shorter by no more than `most`. */
  | { readonly kind: "keeps-size"; readonly most: Length };

/** The rows that become of its row, what she means most likely first; the row alone, not the whole layout. */
export function rowsShifted(
  shift: Shift,
  layout: LayoutNode,
  job: Job,
): readonly LayoutNode[] | NoShift | null {
  const { at, along, by } = shift;
  const place = inRowAlong(layout, at, along);
  if (place === null || by === 0) return null;
  if (by % job.step !== 0) return { kind: "off-ruler", step: job.step };
  const parts = shift.kind === "move" ? moved(place, by, job) : grown(place, by, job);
  return "kind" in parts ? parts : parts.map((made) => ({ ...place.row, parts: made }));
}

type Rows = readonly (readonly LayoutNode[])[];

function moved({ row: { parts }, index, along }: InRow, by: number, job: Job): Rows | NoShift {
  const [before, after] = [placesBefore(index, parts), placesAfter(index, parts)];
  if (before.length === 0 || after.length === 0) return { kind: "at-the-end" };
  const [giving, taking] = by < 0 ? [before, after] : [after, before];
  const size = Math.abs(by);
  const most = Math.min(givenBy(parts, giving, { along, job }), takenBy(parts, taking, { along, job }));
  if (size > most) return { kind: "no-room", most: length(most) };
  const given = shared(parts, { among: giving, along, by: -size }, job);
  return takers(parts, taking, { along, job })
    .filter(({ room }) => room.longer >= size)
    .map(({ place }) => shared(given, { among: [place], along, by: size }, job))
    .concat([shared(given, { among: taking, along, by: size }, job)]);
}

function grown({ node, row: { parts }, index, along }: InRow, by: number, job: Job): Rows | NoShift {
  const own = roomOf(node, along, job);
  const mostOwn = by < 0 ? own.shorter : own.longer;
  const size = Math.abs(by);
  if (size > mostOwn) return { kind: "keeps-size", most: length(mostOwn) };
  const others = [...placesAfter(index, parts), ...placesBefore(index, parts)];
  const sides = { along, job };
  const most = by < 0 ? takenBy(parts, others, sides) : givenBy(parts, others, sides);
  if (size > most) return { kind: "no-room", most: length(most) };
  const changed = parts.with(index, resized(node, along, by, job));
  const each = takers(parts, others, sides)
    .filter(({ room }) => (by < 0 ? room.longer : room.shorter) >= size)
    .map(({ place }) => [place]);
  return [...each, others].map((among) => shared(changed, { among, along, by: -by }, job));
}

function placesBefore(index: number, parts: readonly LayoutNode[]): readonly number[] {
  return [...parts.keys()].slice(0, index);
}

function placesAfter(index: number, parts: readonly LayoutNode[]): readonly number[] {
  return [...parts.keys()].slice(index + 1);
}

type Sides = { readonly along: Side; readonly job: Job };

function takers(parts: readonly LayoutNode[], places: readonly number[], { along, job }: Sides) {
  return givingOrder(parts, places, along).flatMap((place): { place: number; room: Room }[] => {
    const part = parts[place];
    return part === undefined ? [] : [{ place, room: roomOf(part, along, job) }];
  });
}

function givenBy(parts: readonly LayoutNode[], places: readonly number[], sides: Sides): number {
  return takers(parts, places, sides).reduce((sum, { room }) => sum + room.shorter, 0);
}

function takenBy(parts: readonly LayoutNode[], places: readonly number[], sides: Sides): number {
  return takers(parts, places, sides).reduce((sum, { room }) => sum + room.longer, 0);
}

/** What may be done with a part of the plan, the part itself first and what it lies in after it. */
export type Shiftable = {
  readonly path: Path;
  readonly along: Side;
  readonly canMove: boolean;
  readonly canGrow: boolean;
};

/** A cell and all that it is a part of, as far as it can change its place or size in the row it lies in. */
export function shiftableAt(layout: LayoutNode, path: Path, job: Job): readonly Shiftable[] {
  const around = path.map((_, depth) => path.slice(0, path.length - depth));
  return around.flatMap((at) => {
    const found = (["width", "height"] as const).flatMap((along) => shiftableAlong(layout, at, along, job));
    return found.filter(({ canMove, canGrow }) => canMove || canGrow);
  });
}

function shiftableAlong(layout: LayoutNode, path: Path, along: Side, job: Job): readonly Shiftable[] {
  const place = inRowAlong(layout, path, along);
  if (place === null) return [];
  const canShift = (kind: Shift["kind"], by: number) =>
    rowIsFound(kind === "move" ? moved(place, by, job) : grown(place, by, job));
  const eitherWay = (kind: Shift["kind"]) => canShift(kind, job.step) || canShift(kind, -job.step);
  return [{ path, along, canMove: eitherWay("move"), canGrow: eitherWay("resize") }];
}

function rowIsFound(rows: Rows | NoShift): boolean {
  return !("kind" in rows);
}
