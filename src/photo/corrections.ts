import { clothOf } from "./colours.ts";
import { density, pixelOn } from "./floorPicture.ts";
import type { OpenPhoto } from "./measure.ts";
import { figureOf, outlineAround } from "./outlines.ts";
import { hullOf, type Polygon, signedArea } from "./polygon.ts";
import { shapeOf } from "./shape.ts";
import { sharpOutline } from "./sides.ts";
import type { MeasuredPiece, Place } from "./types.ts";
import type { Vision } from "./vision.ts";

/** What she says of the photo; places are in its pixels. */
export type Correction =
  /** A piece has its corners here. `snaps`: which of them go to the cloth's own edges, where those are near. */
  | { readonly kind: "corners"; readonly pixels: readonly Place[]; readonly snaps: number | "all" | "none" }
  /** It is two, along the line between these. */
  | { readonly kind: "split"; readonly pixels: readonly Place[]; readonly from: Place; readonly to: Place }
  /** These are one. */
  | { readonly kind: "merge"; readonly pixels: readonly (readonly Place[])[] }
  /** One was missed: this place is inside of it. */
  | { readonly kind: "inside"; readonly at: Place };

/** The pieces that a correction makes, measured; none where it makes no sense. */
export function corrected(
  opened: OpenPhoto,
  vision: Vision,
  correction: Correction,
): readonly MeasuredPiece[] {
  return polygonsOf(opened, vision, correction)
    .map((polygon) => pieceWith(opened, polygon))
    .filter((piece) => piece !== null);
}

function polygonsOf(opened: OpenPhoto, vision: Vision, correction: Correction): readonly Polygon[] {
  const { scene } = opened;
  switch (correction.kind) {
    case "corners": {
      const polygon = onFloor(opened, correction.pixels);
      return polygon === null ? [] : [snapped(opened, polygon, correction.snaps)];
    }
    case "split": {
      const [polygon, line] = [
        onFloor(opened, correction.pixels),
        placesOnFloor(opened, [correction.from, correction.to]),
      ];
      return polygon === null || line === null ? [] : splitAlong(polygon, line);
    }
    case "merge": {
      const all = correction.pixels.map((pixels) => onFloor(opened, pixels));
      if (all.some((polygon) => polygon === null)) return [];
      const hull = hullOf(all.flatMap((polygon) => polygon ?? []));
      return [snapped(opened, figureOf(hull) ?? hull, "all")];
    }
    case "inside": {
      const at = scene.views.toFloor(correction.at);
      const polygon = at && outlineAround(pixelOn(scene.picture, at), scene, vision);
      return polygon === null ? [] : [snapped(opened, polygon, "all")];
    }
  }
}

function placesOnFloor({ scene }: OpenPhoto, pixels: readonly Place[]): Polygon | null {
  const places = pixels.map((pixel) => scene.views.toFloor(pixel)).filter((place) => place !== null);
  return places.length < pixels.length ? null : places;
}

/** Clockwise, whichever way round she went; null of what is none. */
function onFloor(opened: OpenPhoto, pixels: readonly Place[]): Polygon | null {
  const polygon = placesOnFloor(opened, pixels);
  if (polygon === null || polygon.length < 3 || signedArea(polygon) === 0) return null;
  return signedArea(polygon) > 0 ? polygon : polygon.toReversed();
}

// In inches: further off an edge is another one, and she meant the place she chose.
const snapsWithin = 0.25;

function snapped({ scene }: OpenPhoto, polygon: Polygon, snaps: number | "all" | "none"): Polygon {
  const sharp = snaps === "none" ? null : sharpOutline(scene, polygon);
  if (sharp === null || sharp.polygon.length !== polygon.length) return polygon;
  return polygon.map((corner, at) => {
    const edge = sharp.polygon[at];
    const isNear = edge !== undefined && Math.hypot(edge[0] - corner[0], edge[1] - corner[1]) < snapsWithin;
    return isNear && (snaps === "all" || snaps === at) ? edge : corner;
  });
}

/** What she drew is no longer doubted for what the photo shows of it; what holds of the whole photo still is. */
function pieceWith({ scene, step, common }: OpenPhoto, polygon: Polygon): MeasuredPiece | null {
  const cloth = clothOf(scene.picture, polygon, scene.unshaded(polygon));
  if (cloth === null) return null;
  const { doubts, ...shape } = shapeOf(polygon, { pixel: 1 / density(scene.views, polygon), step });
  const { colours, busyness } = cloth;
  const pixels = polygon.map(scene.views.toPhoto);
  return { ...shape, pixels, colours, busyness, check: [...doubts, ...common] };
}

/** The two parts to both sides of a line, which goes from the side nearest its one end to that nearest the other. */
export function splitAlong(polygon: Polygon, line: Polygon): readonly Polygon[] {
  const [from, to] = line
    .map((end) => nearestOnSide(polygon, end))
    .toSorted((one, other) => one.side - other.side);
  if (!from || !to || from.side === to.side) return [];
  const one = [from.at, ...polygon.slice(from.side + 1, to.side + 1), to.at];
  const other = [to.at, ...polygon.slice(to.side + 1), ...polygon.slice(0, from.side + 1), from.at];
  const parts = [one, other].map(withoutDoubles);
  return parts.every((part) => part.length > 2 && signedArea(part) > leastPart) ? parts : [];
}

// In square inches.
const leastPart = 0.1;
const samePlace = 0.02;

function withoutDoubles(polygon: Polygon): Polygon {
  return polygon.filter((place, at) => {
    const before = polygon.at(at - 1) ?? place;
    return Math.hypot(place[0] - before[0], place[1] - before[1]) > samePlace;
  });
}

type OnSide = { readonly side: number; readonly at: Place; readonly far: number };

function nearestOnSide(polygon: Polygon, [x, y]: Place): OnSide {
  const places = polygon.map(([ax, ay], side): OnSide => {
    const [bx, by] = polygon[(side + 1) % polygon.length] ?? [ax, ay];
    const [dx, dy] = [bx - ax, by - ay];
    const along = ((x - ax) * dx + (y - ay) * dy) / Math.max(1e-12, dx * dx + dy * dy);
    const share = Math.max(0, Math.min(1, along));
    const at: Place = [ax + share * dx, ay + share * dy];
    return { side, at, far: Math.hypot(x - at[0], y - at[1]) };
  });
  return places.reduce((best, place) => (place.far < best.far ? place : best));
}
