import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import type { Place } from "../../../photo/index.ts";
import styles from "./corners.module.css";
import { insideOf, type PhotoSize, placeAt, placeOf, wayOf } from "./places.ts";

/** A photo that is looked at: an address of its picture, and the size in which its places count. */
export type ShownPhoto = PhotoSize & { readonly picture: string };

type CornersProps = {
  readonly photo: ShownPhoto;
  readonly pixels: readonly Place[];
  readonly nameOf: (corner: number) => string;
  /** Hears of every place that a corner comes by. */
  readonly onMoving?: (pixels: readonly Place[]) => void;
  /** A corner was let go; or no arrow key was pressed for a moment. */
  readonly onMoved: (pixels: readonly Place[], corner: number, how: "dragged" | "pressed") => void;
};

type Moving = { readonly corner: number; readonly pixels: readonly Place[]; readonly isDragged: boolean };

// In the photo's pixels, at one press of an arrow key; with Shift.
const steps = { near: 1, far: 10 };
// Milliseconds: several presses are one move.
const settles = 700;

/** Corners on a photo, to be dragged, or moved by the arrow keys; what lies under the finger is shown larger. */
export function Corners({ photo, pixels, nameOf, onMoving, onMoved }: CornersProps) {
  const [moving, setMoving] = useState<Moving | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another outline is there, so the move is done
  useEffect(() => {
    clearTimeout(timer.current);
    setMoving(null);
  }, [pixels]);
  useEffect(() => () => clearTimeout(timer.current), []);
  const shown = moving?.pixels ?? pixels;
  const move = (corner: number, at: Place, isDragged: boolean) => {
    const next = shown.map((place, n) => (n === corner ? insideOf(at, photo) : place));
    setMoving({ corner, pixels: next, isDragged });
    onMoving?.(next);
    return next;
  };
  const drag = (corner: number, event: PointerEvent<HTMLButtonElement>) => {
    const { currentTarget, pointerId } = event;
    if (!currentTarget.hasPointerCapture(pointerId) || currentTarget.parentElement === null) return;
    move(corner, placeAt(event, currentTarget.parentElement, photo), true);
  };
  const drop = () => moving?.isDragged && onMoved(moving.pixels, moving.corner, "dragged");
  const press = (corner: number, event: KeyboardEvent) => {
    const [way, from] = [wayOf(event.key), shown[corner]];
    if (way === null || from === undefined) return;
    event.preventDefault();
    const far = event.shiftKey ? steps.far : steps.near;
    const next = move(corner, [from[0] + far * way[0], from[1] + far * way[1]], false);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => onMoved(next, corner, "pressed"), settles);
  };
  return (
    <>
      {moving !== null && <Outline photo={photo} pixels={moving.pixels} />}
      {shown.map((place, corner) => (
        <button
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner is known by its place in the row
          key={corner}
          type="button"
          className={styles.handle}
          style={placeOf(place, photo)}
          aria-label={nameOf(corner)}
          onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
          onPointerMove={(event) => drag(corner, event)}
          onPointerUp={drop}
          onPointerCancel={() => setMoving(null)}
          onKeyDown={(event) => press(corner, event)}
        />
      ))}
      {moving !== null && <Loupe photo={photo} moving={moving} />}
    </>
  );
}

type OutlineProps = Pick<CornersProps, "photo" | "pixels">;

/** Over the photo, in two strokes so that it shows on any cloth. */
export function Outline({ photo: { width, height }, pixels }: OutlineProps) {
  return (
    <svg viewBox={`0 0 ${width} ${height}`} className={styles.over} aria-hidden="true">
      <Lines pixels={pixels} />
    </svg>
  );
}

/** Outlines count from the first pixel's middle, pictures from its corner. */
function Lines({ pixels }: Pick<OutlineProps, "pixels">) {
  const points = pixels.map(([x, y]) => `${x + 0.5},${y + 0.5}`).join(" ");
  return (
    <>
      <polygon points={points} className={styles.moved} />
      <polygon points={points} className={styles.moved} />
    </>
  );
}

// Of the photo's longer side, to every side of the corner.
const looksAt = 1 / 30;

/** What lies under the finger, larger. */
function Loupe({ photo, moving }: Pick<CornersProps, "photo"> & { readonly moving: Moving }) {
  const { width, height } = photo;
  const [x, y] = moving.pixels[moving.corner] ?? [0, 0];
  const reach = looksAt * Math.max(width, height);
  return (
    <svg
      viewBox={`${x - reach} ${y - reach} ${2 * reach} ${2 * reach}`}
      className={`cloth ${styles.loupe}`}
      data-at={x < width / 2 ? "right" : "left"}
      aria-hidden="true"
    >
      <image href={photo.picture} width={width} height={height} preserveAspectRatio="none" />
      <Lines pixels={moving.pixels} />
    </svg>
  );
}
