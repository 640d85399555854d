import sharp from "sharp";
import { type MeasuredFile, type Photo, writeOverlay } from "../photo/index.ts";
import type { Output } from "./files.ts";

// What is looked at on a screen needn't be larger.
const longSide = 2000;

/** The photo with what was found drawn over it, as the file's ending asks: a picture of pixels, or one to be scaled. */
export async function overlayFor(file: string, photo: Photo, { measured }: MeasuredFile): Promise<Output> {
  const { width, height, rgba } = photo;
  const share = Math.min(1, longSide / Math.max(width, height));
  const small = sharp(rgba, { raw: { width, height, channels: 4 } }).resize(Math.round(width * share));
  const jpeg = await small.removeAlpha().jpeg({ quality: 85 }).toBuffer();
  const svg = writeOverlay({
    photo,
    pieces: measured.pieces,
    picture: `data:image/jpeg;base64,${jpeg.toString("base64")}`,
    label: (_, number) => String(number),
  });
  if (/\.svg$/i.test(file)) return { file, content: svg };
  // Drawn without its photo, which is then laid under it: a picture inside a picture is not read from everywhere.
  const lines = svg
    .replace(/<image [^>]*>/, "")
    .replace(/ width="\d+" height="\d+">/, ` width="${Math.round(width * share)}">`);
  const content = await sharp(jpeg)
    .composite([{ input: Buffer.from(lines) }])
    .png()
    .toBuffer();
  return { file, content };
}
