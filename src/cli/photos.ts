import { createRequire } from "node:module";
import sharp from "sharp";
import { err, ok, type Result } from "../engine/length/index.ts";
import type { Photo, Vision } from "../photo/index.ts";
import type { CommandProblem } from "../words/index.ts";

const mostMegapixels = 60;

/** The vision library: large, so it is loaded when it is needed. Its export is a promise of itself. */
export async function loadVision(): Promise<Vision> {
  const vision: Vision = await createRequire(import.meta.url)("@techstark/opencv-js");
  return vision;
}

/** A photo upright and in sRGB. What it claims to be is looked at before it is unpacked. */
export async function decodePhoto(bytes: Uint8Array, file: string): Promise<Result<Photo, CommandProblem>> {
  try {
    const { width, height, pages } = await sharp(bytes).metadata();
    if ((pages ?? 1) > 1) return err({ kind: "not-a-photo", file });
    const megapixels = (width * height) / 1e6;
    if (megapixels > mostMegapixels)
      return err({ kind: "photo-too-large", file, megapixels, most: mostMegapixels });
    const upright = sharp(bytes, { failOn: "truncated" }).autoOrient().flatten({ background: "#ffffff" });
    const { data, info } = await upright
      .toColourspace("srgb")
      .ensureAlpha()
      .raw({ depth: "uchar" })
      .toBuffer({ resolveWithObject: true });
    return ok({ width: info.width, height: info.height, rgba: data });
  } catch {
    // Whatever the decoder stumbles over, it is the file's fault, and the decoder's own words would not help her.
    return err({ kind: "not-a-photo", file });
  }
}
