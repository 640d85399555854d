import type { Place } from "../../../photo/index.ts";

/** The way an arrow key points; null of another key. */
export function wayOf(key: string): Place | null {
  switch (key) {
    case "ArrowLeft":
      return [-1, 0];
    case "ArrowRight":
      return [1, 0];
    case "ArrowUp":
      return [0, -1];
    case "ArrowDown":
      return [0, 1];
    default:
      return null;
  }
}

export type PhotoSize = { readonly width: number; readonly height: number };

/** Where in the shown photo a place of it stands. Places count from the first pixel's middle, pictures from its corner. */
export function placeOf([x, y]: Place, { width, height }: PhotoSize) {
  return { left: `${(100 * (x + 0.5)) / width}%`, top: `${(100 * (y + 0.5)) / height}%` };
}

type Pointed = { readonly clientX: number; readonly clientY: number };

/** The place of the photo that was pointed at, where `shown` shows all of it. */
export function placeAt({ clientX, clientY }: Pointed, shown: Element, { width, height }: PhotoSize): Place {
  const box = shown.getBoundingClientRect();
  return [
    ((clientX - box.left) / box.width) * width - 0.5,
    ((clientY - box.top) / box.height) * height - 0.5,
  ];
}

/** The place of the photo that is nearest to it. */
export function insideOf([x, y]: Place, { width, height }: PhotoSize): Place {
  return [Math.max(-0.5, Math.min(width - 0.5, x)), Math.max(-0.5, Math.min(height - 0.5, y))];
}
