import { err, ok, type Result } from "../../../engine/length/index.ts";
import {
  checkPhotoFile,
  fromWide,
  type Photo,
  type PhotoHeader,
  type PhotoRefusal,
} from "../../../photo/index.ts";
import { loadHeif } from "./libraries.ts";

export type Decoded = { readonly photo: Photo; readonly focal35: number | null };

/** A photo upright and in sRGB. What it claims to be is looked at before it is unpacked. */
export async function decodePhoto(file: Blob): Promise<Result<Decoded, PhotoRefusal>> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const header = checkPhotoFile(bytes);
  if (!header.ok) return header;
  // Outside of what is caught: a library that is missing is not the file's fault.
  const heif = header.value.type === "heic" ? await loadHeif() : null;
  try {
    const photo = heif === null ? await fromCommon(file) : await shownBy(heif, bytes, header.value);
    return ok({ photo, focal35: header.value.focal35 });
  } catch {
    return err({ kind: "not-a-photo" });
  }
}

// A canvas of some browsers holds no more than 16 million pixels.
const stripPixels = 4_000_000;

async function fromCommon(file: Blob): Promise<Photo> {
  const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  const { width, height } = bitmap;
  const rgba = new Uint8ClampedArray(4 * width * height);
  const rows = Math.max(1, Math.min(height, Math.floor(stripPixels / width)));
  const context = contextOf(width, rows);
  for (let top = 0; top < height; top += rows) {
    const tall = Math.min(rows, height - top);
    // What is clear lies on white, as on paper.
    context.fillStyle = "#fff";
    context.fillRect(0, 0, width, tall);
    context.drawImage(bitmap, 0, top, width, tall, 0, 0, width, tall);
    rgba.set(context.getImageData(0, 0, width, tall).data, 4 * width * top);
  }
  bitmap.close();
  return { width, height, rgba };
}

/** A place to draw that is read again. */
export function contextOf(width: number, height: number): OffscreenCanvasRenderingContext2D {
  const context = new OffscreenCanvas(width, height).getContext("2d", { willReadFrequently: true });
  if (context === null) throw new Error("there is nowhere to draw");
  return context;
}

type Heif = Awaited<ReturnType<typeof loadHeif>>;

/** It turns the picture upright by itself; its colors it leaves as they are. */
async function shownBy(heif: Heif, bytes: Uint8Array, { isWide }: PhotoHeader): Promise<Photo> {
  const [image, ...others] = new heif.HeifDecoder().decode(bytes);
  if (image === undefined) throw new Error("no picture in it");
  const [width, height] = [image.get_width(), image.get_height()];
  const pixels = await new Promise<{ readonly data: Uint8ClampedArray }>((shown, failed) => {
    image.display({ data: new Uint8ClampedArray(4 * width * height), width, height }, (made) =>
      made === null ? failed(new Error("unread")) : shown(made),
    );
  });
  for (const one of [image, ...others]) one.free();
  const photo = { width, height, rgba: pixels.data };
  return isWide ? fromWide(photo) : photo;
}
