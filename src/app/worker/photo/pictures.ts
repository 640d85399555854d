import { largestPicture } from "../../../files/index.ts";
import { cutOut, type MeasuredPiece, type Photo } from "../../../photo/index.ts";
import { contextOf } from "./decode.ts";

// Long sides, in pixels: what is looked at on a screen, and what stands beside a row.
const pictureSide = 2000;
const cutOutSide = 320;
const quality = 0.85;
const coarse = 0.6;

/**
 * The photo as it is looked at and kept: small, and with nothing that its file said of place, time and camera. Coarser
 * where it would be too large to be kept.
 */
export async function pictureOf(photo: Photo): Promise<Blob> {
  const { canvas } = await smallOf(photo);
  const fine = await jpegOf(canvas);
  return fine.size <= largestPicture ? fine : canvas.convertToBlob({ type: "image/jpeg", quality: coarse });
}

/** Drawn so small that its longer side is at most what a screen shows of it. */
export async function smallOf({ width, height, rgba }: Photo): Promise<OffscreenCanvasRenderingContext2D> {
  const share = Math.min(1, pictureSide / Math.max(width, height));
  const whole = await createImageBitmap(imageOf({ width, height, rgba }));
  const context = contextOf(Math.round(width * share), Math.round(height * share));
  context.imageSmoothingQuality = "high";
  context.drawImage(whole, 0, 0, context.canvas.width, context.canvas.height);
  whole.close();
  return context;
}

export function jpegOf(canvas: OffscreenCanvas): Promise<Blob> {
  return canvas.convertToBlob({ type: "image/jpeg", quality });
}

/** A piece straightened; one that fills its picture needs nothing clear, and is a tenth as large so. */
export function cutOutPicture(photo: Photo, piece: MeasuredPiece): Promise<Blob> {
  const cut = cutOut(photo, piece, cutOutSide);
  const context = contextOf(cut.width, cut.height);
  context.putImageData(imageOf(cut), 0, 0);
  const isFull = piece.kind !== "triangle" && piece.kind !== "odd";
  return isFull ? jpegOf(context.canvas) : context.canvas.convertToBlob({ type: "image/png" });
}

export function imageOf({ width, height, rgba }: Photo): ImageData {
  return new ImageData(new Uint8ClampedArray(rgba), width, height);
}
