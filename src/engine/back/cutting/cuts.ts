import { assert, inches, type Length, length } from "../../length/index.ts";
import type { Box, CutPlace } from "./types.ts";

/** One cut from edge to edge of what is left at that moment. */
export type ClothCut = {
  /** `across`: from left to right at y = `at`; `down`: from top to bottom at x = `at`. */
  readonly way: "across" | "down";
  readonly at: Length;
  readonly from: Length;
  readonly to: Length;
};

export type Remain = {
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
};

/** What is worth keeping: at least 2 by 5 in, either way round. */
export function isKept(width: number, height: number): boolean {
  return Math.min(width, height) >= inches(2) && Math.max(width, height) >= inches(5);
}

/**
 * The cuts that take the cells out of their cloth, in order, and what goes back to the shelf. Large rests are cut
 * off first, whole. Throws when the places cannot be reached by cuts from edge to edge.
 */
export function cutsOf(
  cloth: { readonly width: Length; readonly height: Length },
  places: readonly CutPlace[],
): { readonly cuts: readonly ClothCut[]; readonly remains: readonly Remain[] } {
  const cuts: ClothCut[] = [];
  const remains: Remain[] = [];
  cutUp({ x: 0, y: 0, width: cloth.width, height: cloth.height }, places, { cuts, remains });
  return { cuts, remains };
}

type Log = { readonly cuts: ClothCut[]; readonly remains: Remain[] };

function cutUp(region: Box, places: readonly CutPlace[], log: Log): void {
  if (places.length === 0) {
    if (isKept(region.width, region.height)) log.remains.push(asRemain(region));
    return;
  }
  const [only] = places;
  if (places.length === 1 && only !== undefined && isWhole(region, only)) return;
  const line = restLine(region, places) ?? dividingLine(region, places);
  assert(line !== null, "cells can be cut from their cloth from edge to edge");
  log.cuts.push(asCut(line, region));
  const [before, after] = parts(region, line);
  cutUp(
    before,
    places.filter((place) => isBefore(place, line)),
    log,
  );
  cutUp(
    after,
    places.filter((place) => !isBefore(place, line)),
    log,
  );
}

type Line = { readonly way: "across" | "down"; readonly at: number };

function isWhole(region: Box, place: CutPlace): boolean {
  return place.width === region.width && place.height === region.height;
}

/** The cut behind the last cell that leaves the larger rest in one piece. */
function restLine(region: Box, places: readonly CutPlace[]): Line | null {
  const right = Math.max(...places.map((place) => place.x + place.width));
  const bottom = Math.max(...places.map((place) => place.y + place.height));
  const rightRest = (region.x + region.width - right) * region.height;
  const bottomRest = (region.y + region.height - bottom) * region.width;
  if (rightRest <= 0 && bottomRest <= 0) return null;
  return rightRest > bottomRest ? { way: "down", at: right } : { way: "across", at: bottom };
}

function dividingLine(region: Box, places: readonly CutPlace[]): Line | null {
  const lines = places.flatMap((place): Line[] => [
    { way: "across", at: place.y },
    { way: "across", at: place.y + place.height },
    { way: "down", at: place.x },
    { way: "down", at: place.x + place.width },
  ]);
  return (
    lines.find((line) => isInside(region, line) && !places.some((place) => crosses(place, line))) ?? null
  );
}

function isInside(region: Box, { way, at }: Line): boolean {
  return way === "across"
    ? at > region.y && at < region.y + region.height
    : at > region.x && at < region.x + region.width;
}

function crosses(place: Box, line: Line): boolean {
  return isInside(place, line);
}

function isBefore(place: Box, { way, at }: Line): boolean {
  return way === "across" ? place.y + place.height <= at : place.x + place.width <= at;
}

function parts(region: Box, { way, at }: Line): readonly [Box, Box] {
  if (way === "across") {
    const height = at - region.y;
    return [
      { ...region, height },
      { ...region, y: at, height: region.height - height },
    ];
  }
  const width = at - region.x;
  return [
    { ...region, width },
    { ...region, x: at, width: region.width - width },
  ];
}

function asCut({ way, at }: Line, region: Box): ClothCut {
  const [from, to] =
    way === "across" ? [region.x, region.x + region.width] : [region.y, region.y + region.height];
  return { way, at: length(at), from: length(from), to: length(to) };
}

function asRemain(region: Box): Remain {
  return {
    x: length(region.x),
    y: length(region.y),
    width: length(region.width),
    height: length(region.height),
  };
}
