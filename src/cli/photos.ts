import { createRequire } from "node:module";
import sharp from "sharp";
import { err, ok, type Result } from "../engine/length/index.ts";
import {
  fromWide,
  mostMegapixels,
  type Photo,
  type PhotoHeader,
  readPhotoHeader,
  type Vision,
} from "../photo/index.ts";
import type { CommandProblem } from "../words/index.ts";

/** The vision library: large, so it is loaded when it is needed. Its export is a promise of itself. */
export async function loadVision(): Promise<Vision> {
  const vision: Vision = await createRequire(import.meta.url)("@techstark/opencv-js");
  return vision;
}

/** A photo with what its file says of the lens. */
export type Decoded = { readonly photo: Photo; readonly focal35: number | null };

/** A photo upright and in sRGB. What it claims to be is looked at before it is unpacked. */
export async function decodePhoto(bytes: Uint8Array, file: string): Promise<Result<Decoded, CommandProblem>> {
  const header = readPhotoHeader(bytes);
  if (header === null) return err({ kind: "not-a-photo", file });
  const megapixels = (header.width * header.height) / 1e6;
  if (megapixels > mostMegapixels)
    return err({ kind: "photo-too-large", file, megapixels, most: mostMegapixels });
  // Outside of what is caught: a library that is missing is not the file's fault.
  const heif = header.type === "heic" ? loadHeif() : null;
  try {
    const photo = heif === null ? await fromCommon(bytes) : await fromHeic(heif, bytes, header);
    return ok({ photo, focal35: header.focal35 });
  } catch {
    // Whatever the decoder stumbles over, it is the file's fault, and the decoder's own words would not help her.
    return err({ kind: "not-a-photo", file });
  }
}

async function fromCommon(bytes: Uint8Array): Promise<Photo> {
  const upright = sharp(bytes, { failOn: "truncated" }).autoOrient().flatten({ background: "#ffffff" });
  const { data, info } = await upright
    .toColourspace("srgb")
    .ensureAlpha()
    .raw({ depth: "uchar" })
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, rgba: data };
}

/** What is used of the library that reads HEIC. */
type Heif = { readonly HeifDecoder: new () => { decode(bytes: Uint8Array): readonly HeifImage[] } };
type HeifImage = {
  get_width(): number;
  get_height(): number;
  free(): void;
  display(into: HeifPixels, done: (shown: HeifPixels | null) => void): void;
};
type HeifPixels = { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number };

function loadHeif(): Heif {
  return createRequire(import.meta.url)("libheif-js/wasm-bundle");
}

/** It turns the picture upright by itself; its colors it leaves as they are. */
async function fromHeic(heif: Heif, bytes: Uint8Array, { isWide }: PhotoHeader): Promise<Photo> {
  return quietly(() => shownBy(heif, bytes, isWide));
}

// The library writes what it stumbles over among our own output.
async function quietly<T>(work: () => Promise<T>): Promise<T> {
  const { log } = console;
  console.log = () => {};
  try {
    return await work();
  } finally {
    console.log = log;
  }
}

async function shownBy(heif: Heif, bytes: Uint8Array, isWide: boolean): Promise<Photo> {
  const [image, ...others] = new heif.HeifDecoder().decode(bytes);
  if (image === undefined) throw new Error("no picture in it");
  const [width, height] = [image.get_width(), image.get_height()];
  if (width * height > mostMegapixels * 1e6) throw new Error("larger than its header says");
  const pixels = await new Promise<HeifPixels>((shown, failed) => {
    image.display({ data: new Uint8ClampedArray(4 * width * height), width, height }, (made) =>
      made === null ? failed(new Error("unread")) : shown(made),
    );
  });
  for (const one of [image, ...others]) one.free();
  const photo = { width, height, rgba: pixels.data };
  return isWide ? fromWide(photo) : photo;
}
