import { err, ok, type Result } from "../engine/length/index.ts";
import { exifIn } from "./exif.ts";

/** What a photo's file says of itself before it is unpacked. */
export type PhotoHeader = {
  readonly type: "jpeg" | "png" | "heic";
  /** As stored, in pixels. */
  readonly width: number;
  readonly height: number;
  /** The lens, as millimetres over a frame of 36 × 24 mm; null where it isn't said. */
  readonly focal35: number | null;
  /** Its colors are meant for a display wider than sRGB's: Display P3. */
  readonly isWide: boolean;
};

/** What no photo larger than this is unpacked for. */
export const mostMegapixels = 60;

/** Why a file can't be measured. */
export type PhotoRefusal =
  | { readonly kind: "not-a-photo" }
  | { readonly kind: "cut-short" }
  | { readonly kind: "too-large"; readonly megapixels: number; readonly most: number }
  | { readonly kind: "no-cards" };

/** Looks at a file before it is unpacked. */
export function checkPhotoFile(bytes: Uint8Array): Result<PhotoHeader, PhotoRefusal> {
  const header = readPhotoHeader(bytes);
  if (header === null) return err({ kind: "not-a-photo" });
  const megapixels = (header.width * header.height) / 1e6;
  if (megapixels > mostMegapixels) return err({ kind: "too-large", megapixels, most: mostMegapixels });
  return hasEnd(bytes, header.type) ? ok(header) : err({ kind: "cut-short" });
}

/** The marks that end a JPEG and a PNG stand in neither's pixels; a browser fills in what is missing without a word. */
function hasEnd(bytes: Uint8Array, type: PhotoHeader["type"]): boolean {
  if (type === "heic") return true;
  const mark = type === "jpeg" ? [0xff, 0xd9] : [0x49, 0x45, 0x4e, 0x44];
  for (let at = bytes.length - mark.length; at > 0; at -= 1) {
    if (mark.every((byte, n) => bytes[at + n] === byte)) return true;
    // What cameras put behind the end is short beside the photo, and an earlier mark ends the small one inside it.
    if (at < bytes.length / 2) return false;
  }
  return false;
}

/** Reads the header of a JPEG (ITU-T T.81, B.1), a PNG (ISO 15948, 5.2) or a HEIC (ISO 23008-12). Null of all else. */
export function readPhotoHeader(bytes: Uint8Array): PhotoHeader | null {
  if (bytes.length < 24) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = jpegSize(view) ?? pngSize(view) ?? heicSize(view);
  if (found === null || found.width === 0 || found.height === 0) return null;
  return { ...found, focal35: exifIn(view)?.focal35 ?? null, isWide: isWide(view) };
}

type Found = Pick<PhotoHeader, "type" | "width" | "height">;

function jpegSize(view: DataView): Found | null {
  if (view.getUint16(0) !== 0xffd8) return null;
  let at = 2;
  while (at + 9 < view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    // A frame of any kind, but neither a table of codes nor of arithmetic.
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { type: "jpeg", height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    at += 2 + view.getUint16(at + 2);
  }
  return null;
}

function pngSize(view: DataView): Found | null {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a) return null;
  return { type: "png", width: view.getUint32(16), height: view.getUint32(20) };
}

const heicBrands = ["heic", "heix", "hevc", "mif1", "msf1"];
// What stands before the pixels is short.
const searched = 1 << 20;

/** The largest of the sizes ("ispe") its parts have: a photo may be made of tiles, and carry small ones. */
function heicSize(view: DataView): Found | null {
  if (textAt(view, 4) !== "ftyp" || !heicBrands.includes(textAt(view, 8))) return null;
  let largest: Found = { type: "heic", width: 0, height: 0 };
  for (const at of placesOf(view, "ispe")) {
    if (at + 16 > view.byteLength) break;
    const [width, height] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    if (width * height > largest.width * largest.height) largest = { type: "heic", width, height };
  }
  return largest;
}

/** A color box with P3's primaries (12 of ITU-T H.273), or a profile of that name. */
function isWide(view: DataView): boolean {
  const named = placesOf(view, "nclx").some(
    (at) => at + 6 <= view.byteLength && view.getUint16(at + 4) === 12,
  );
  return (
    named ||
    placesOf(view, "Display P3").length > 0 ||
    placesOf(view, [..."Display P3"].join("\0")).length > 0
  );
}

function textAt(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((n) => view.getUint8(at + n)));
}

function placesOf(view: DataView, text: string): readonly number[] {
  const places: number[] = [];
  const last = Math.min(searched, view.byteLength) - text.length;
  for (let at = 0; at <= last; at += 1) {
    let n = 0;
    while (n < text.length && view.getUint8(at + n) === text.charCodeAt(n)) n += 1;
    if (n === text.length) places.push(at);
  }
  return places;
}
