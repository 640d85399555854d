/** The photo of a finished top, beside the page: unpacked to be looked at, then straightened by its corners. */
import { largestPicture } from "../../../files/index.ts";
import { type Corners, type Photo, paletteOf, straightened } from "../../../photo/index.ts";
import { contextOf, decodePhoto } from "./decode.ts";
import type { FromPhotoWorker, StraightTop } from "./messages.ts";
import { imageOf, jpegOf, smallOf } from "./pictures.ts";

let small: Photo | null = null;

export async function openTop(file: Blob): Promise<FromPhotoWorker> {
  const decoded = await decodePhoto(file);
  if (!decoded.ok) return { kind: "refused", why: decoded.error };
  const context = await smallOf(decoded.value.photo);
  const { width, height } = context.canvas;
  small = { width, height, rgba: context.getImageData(0, 0, width, height).data };
  return { kind: "top-opened", photo: { picture: await jpegOf(context.canvas), width, height } };
}

// Long sides in pixels: a busy top takes more bytes than a calm one, and no picture may take too many.
const sides = [1400, 1000, 700, 500];

export async function straightTop(corners: Corners, ratio: number): Promise<StraightTop | null> {
  if (small === null) throw new Error("no photo of a top is open");
  for (const side of sides) {
    const size = {
      width: Math.max(1, Math.round(side * Math.min(1, ratio))),
      height: Math.max(1, Math.round(side / Math.max(1, ratio))),
    };
    const top = straightened(small, corners, size);
    if (top === null) return null;
    const context = contextOf(size.width, size.height);
    context.putImageData(imageOf(top), 0, 0);
    const picture = await jpegOf(context.canvas);
    if (picture.size <= largestPicture) return { picture, palette: paletteOf(top) };
  }
  throw new Error("a small picture has few bytes");
}
