import { inches, type Length } from "../engine/length/index.ts";
import { type Calibration, calibrated, type Lying } from "./calibrate.ts";
import { type Camera, viewsOf } from "./camera.ts";
import { type Cloth, clothOf } from "./colours.ts";
import { sharpened } from "./corners.ts";
import { besideDoubts, doubtsOf, isPiece, type Seen } from "./doubts.ts";
import { density, type FloorPicture, floorPicture, pixelOn } from "./floorPicture.ts";
import { floorColourAt, groundOf } from "./ground.ts";
import { findMarkers } from "./markers.ts";
import type { Outline } from "./outline.ts";
import { outlinesOn } from "./outlines.ts";
import { evenLight } from "./paper.ts";
import { centreOf, isRightAngled, type Polygon } from "./polygon.ts";
import { coveredBy } from "./rings.ts";
import { unshadedBy } from "./shade.ts";
import { shapeOf } from "./shape.ts";
import { type Scene, type SharpOutline, sharpOutline } from "./sides.ts";
import type { Doubt, MeasuredPhoto, MeasuredPiece, Photo, PhotoWarning, Place } from "./types.ts";
import type { Vision } from "./vision.ts";

export type MeasureOptions = {
  /** What a ruler said of the check bars, as a share of what they were meant to be. */
  readonly printed: number;
  /** What the photo's file says of the lens, as millimetres over a frame of 36 × 24 mm. */
  readonly focal35?: number | null;
  /** What sizes are rounded down to; an eighth of an inch where it isn't said. */
  readonly step?: Length;
  /** Hears how far it has come. */
  readonly onStage?: (stage: Stage) => void;
};

/** In this order. */
export const stages = ["markers", "floor", "pieces"] as const;
export type Stage = (typeof stages)[number];

// Of the photo's long side: flat cards lie within a few ten-thousandths of where the camera puts them.
const curled = 6e-4;

/** A photo that was measured, with all that a correction can be looked up in. */
export type OpenPhoto = {
  readonly measured: MeasuredPhoto;
  readonly camera: Camera;
  readonly scene: Scene;
  readonly lying: readonly Lying[];
  readonly step: Length;
  /** What holds of every piece in it. */
  readonly common: readonly Doubt[];
};

const usualStep = inches(1, 8);

/** Finds and measures all that lies round the cards in a photo. `vision` does the marker and mask work. */
export function measurePhoto(photo: Photo, vision: Vision, options: MeasureOptions): MeasuredPhoto {
  const opened = openPhoto(photo, vision, options);
  return "measured" in opened ? opened.measured : opened;
}

/** The same, and keeps what it was measured in; the empty measurement alone where there are no cards to measure by. */
export function openPhoto(
  photo: Photo,
  vision: Vision,
  options: MeasureOptions,
): OpenPhoto | (MeasuredPhoto & { readonly residual: null }) {
  const { printed, focal35 = null, step = usualStep, onStage } = options;
  onStage?.("markers");
  const found = findMarkers(photo, vision);
  const markers = found.map((marker) => sharpened(photo, marker)).filter((marker) => marker !== null);
  const cards = markers.map(({ id }) => id);
  const calibration = calibrated(markers, { width: photo.width, height: photo.height, printed, focal35 });
  onStage?.("floor");
  const scene = calibration && sceneOf(photo, calibration, vision);
  if (!calibration || !scene) return { cards, residual: null, warnings: [], pieces: [] };
  const warnings = warningsOf(photo, calibration);
  const common: readonly Doubt[] = [
    ...(warnings.includes("curled-card") ? (["curled-card"] as const) : []),
    ...(warnings.includes("one-sheet") || warnings.includes("few-cards") ? (["one-sheet"] as const) : []),
  ];
  onStage?.("pieces");
  const pieces = piecesOn(scene, vision, { step, more: common });
  const measured = { cards, residual: calibration.residual, warnings, pieces };
  const { camera, lying } = calibration;
  return { measured, camera, scene, lying, step, common };
}

/**
 * A photo whose floor was taken for something else, measured again: its floor is grown from a place in the photo where
 * she says that it lies bare. Null where that place can't be floor: it is outside of what is seen, or on a card.
 */
export function withFloorAt(opened: OpenPhoto, vision: Vision, place: Place): OpenPhoto | null {
  const { scene, lying, step, common, measured } = opened;
  const { picture, views } = scene;
  const at = views.toFloor(place);
  const bareAt = at && pixelOn(picture, at);
  if (bareAt === null || !isOpen(picture, coveredBy(picture, lying), bareAt)) return null;
  const ground = groundOf(picture, { lying, bareAt }, vision);
  const again = { ...scene, ground, unshaded: unshadedBy(picture, ground, lying) };
  const pieces = piecesOn(again, vision, { step, more: common });
  return { ...opened, scene: again, measured: { ...measured, pieces } };
}

function isOpen({ width, height }: FloorPicture, covered: Uint8Array, place: Place): boolean {
  const [x, y] = [Math.round(place[0]), Math.round(place[1])];
  return x >= 0 && y >= 0 && x < width && y < height && covered[y * width + x] === 0;
}

function piecesOn(scene: Scene, vision: Vision, { step, more }: Naming): readonly MeasuredPiece[] {
  const seen = outlinesOn(scene.picture, scene.ground, vision)
    .map((outline) => seenOf(scene, outline))
    .filter((one) => one !== null);
  const polygons = seen.map(({ polygon }) => polygon);
  return seen
    .map((one) => {
      const beside = one.outline.split ? [] : besideDoubts(one.polygon, polygons);
      return pieceOf(scene, one, { step, more: [...beside, ...more] });
    })
    .filter((piece) => piece !== null);
}

function sceneOf(photo: Photo, { camera, lying }: Calibration, vision: Vision): Scene | null {
  const views = viewsOf(camera);
  const light = evenLight(photo, views, lying);
  if (light === null) return null;
  const picture = floorPicture(
    photo,
    views,
    light,
    lying.map(({ at }) => at),
  );
  const ground = groundOf(picture, { lying }, vision);
  return { photo, views, light, picture, ground, unshaded: unshadedBy(picture, ground, lying) };
}

function warningsOf({ width, height }: Photo, { lying, worst }: Calibration): readonly PhotoWarning[] {
  const sheets = lying.filter(({ target }) => target.kind === "sheet").length;
  return [
    ...(worst > Math.max(0.8, curled * Math.max(width, height)) ? (["curled-card"] as const) : []),
    // With so few, the camera's bend can't be told from the floor's size in the middle between them.
    ...(sheets < 2 && lying.length < 3 ? ([sheets === 1 ? "one-sheet" : "few-cards"] as const) : []),
  ];
}

/** Where the mask shows right angles and the sides looked at one by one do not, a side was misled. */
function surest({ polygon }: Outline, sharp: SharpOutline | null): SharpOutline {
  if (sharp === null) return { polygon, clear: 0 };
  return isRightAngled(polygon) && !isRightAngled(sharp.polygon)
    ? { polygon, clear: 0.5 * sharp.clear }
    : sharp;
}

// In inches: what is seen of less, at the photo's end or beside a card, is a shadow, or the edge of what the card lies on.
const leastCutOff = 0.75;

type Naming = { readonly step: Length; readonly more: readonly Doubt[] };

/** Null of what is no cloth. */
function seenOf(scene: Scene, outline: Outline): SeenWhole | null {
  const { polygon, clear } = surest(outline, outline.cutOff ? null : sharpOutline(scene, outline.polygon));
  const cloth = clothOf(scene.picture, polygon, scene.unshaded(polygon));
  if (cloth === null) return null;
  const floor = floorColourAt(scene.ground, pixelOn(scene.picture, centreOf(outline.polygon)));
  const seen = {
    outline,
    polygon,
    sides: polygon.length,
    clear,
    mean: cloth.mean,
    floor,
    isLined: scene.ground.hasLines,
    cloth,
  };
  return isPiece(seen) ? seen : null;
}

type SeenWhole = Seen & { readonly polygon: Polygon; readonly cloth: Cloth };

function pieceOf(scene: Scene, seen: SeenWhole, { step, more }: Naming): MeasuredPiece | null {
  const { outline, polygon, cloth } = seen;
  const { doubts, ...shape } = shapeOf(polygon, { pixel: 1 / density(scene.views, polygon), step });
  if (outline.cutOff && Math.min(shape.measured.width, shape.measured.height) < leastCutOff) return null;
  const { colours, busyness } = cloth;
  const check = [...doubtsOf(seen), ...doubts, ...more];
  return { ...shape, pixels: polygon.map(scene.views.toPhoto), colours, busyness, check };
}
