import { readFileSync } from "node:fs";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { readPhotoHeader } from "../photo/index.ts";
import { decodePhoto } from "./photos.ts";

const read = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../test/data/photos/${name}`, import.meta.url)));
const heic = read("scene.heic");
const png = read("scene.png");

const decoded = async (bytes: Uint8Array) => {
  const result = await decodePhoto(bytes, "a");
  if (!result.ok) throw new Error(result.error.kind);
  return result.value;
};
const problem = async (bytes: Uint8Array) => {
  const result = await decodePhoto(bytes, "a");
  return result.ok ? null : result.error.kind;
};

/** Mean over red, green and blue of all pixels; both must be opaque. */
function meanDifference(one: ArrayLike<number>, other: ArrayLike<number>): number {
  expect(one.length).toBe(other.length);
  let sum = 0;
  for (let at = 0; at < one.length; at += 1) sum += Math.abs((one[at] ?? 0) - (other[at] ?? 0));
  return sum / (0.75 * one.length);
}

describe("a photo's header", () => {
  it("tells type and size before anything is unpacked", async () => {
    const jpeg = await sharp(png).jpeg().toBuffer();
    for (const [bytes, type] of [
      [png, "png"],
      [heic, "heic"],
      [jpeg, "jpeg"],
    ] as const)
      expect(readPhotoHeader(bytes)).toMatchObject({
        type,
        width: 320,
        height: 240,
        focal35: null,
        isWide: false,
      });
  });

  it("tells the lens, where the camera wrote it down", async () => {
    const exif = { IFD2: { FocalLengthIn35mmFilm: "26" } };
    const jpeg = await sharp(png).withExif(exif).jpeg().toBuffer();
    expect(readPhotoHeader(jpeg)?.focal35).toBe(26);
    expect((await decoded(jpeg)).focal35).toBe(26);
  });

  it("is none of what is no photo, however it is cut off", () => {
    const cuts = Array.from({ length: 60 }, (_, at) => at);
    for (const bytes of [png, heic]) for (const cut of cuts) readPhotoHeader(bytes.slice(0, cut));
    expect(readPhotoHeader(new TextEncoder().encode("kind,width,height,count,fabric"))).toBeNull();
    expect(readPhotoHeader(new Uint8Array(64))).toBeNull();
  });
});

describe("a photo", () => {
  it("is the same from HEIC as from PNG, to one step of 255", async () => {
    const [one, other] = [await decoded(heic), await decoded(png)];
    expect(meanDifference(one.photo.rgba, other.photo.rgba)).toBeLessThanOrEqual(1);
  });

  it("is upright, whichever way the camera was held", async () => {
    // Turned a quarter to the left, and told to be turned back: EXIF orientation 6.
    const turned = await sharp(png).rotate(-90).withMetadata({ orientation: 6 }).png().toBuffer();
    const { photo } = await decoded(turned);
    expect([photo.width, photo.height]).toEqual([320, 240]);
    expect(meanDifference(photo.rgba, (await decoded(png)).photo.rgba)).toBe(0);
  });

  it("of a wide display's colors is brought to sRGB", async () => {
    const solid = { width: 8, height: 8, channels: 3, background: { r: 200, g: 80, b: 60 } } as const;
    const wide = await sharp({ create: solid }).withIccProfile("p3").png().toBuffer();
    const { photo } = await decoded(wide);
    // The profile is written with its colors: the same color as before, but for rounding.
    [200, 80, 60].forEach((value, channel) => {
      expect(Math.abs((photo.rgba[channel] ?? 0) - value)).toBeLessThanOrEqual(2);
    });
  });

  it("is refused where it is cut short, no photo, or of more than 60 megapixels", async () => {
    expect(await problem(png.slice(0, png.length / 2))).toBe("not-a-photo");
    expect(await problem(heic.slice(0, heic.length / 2))).toBe("not-a-photo");
    expect(await problem(new TextEncoder().encode("kind,width,height,count,fabric,colour"))).toBe(
      "not-a-photo",
    );
    const large = png.slice();
    new DataView(large.buffer).setUint32(16, 9000);
    new DataView(large.buffer).setUint32(20, 9000);
    expect(await problem(large)).toBe("photo-too-large");
  });
});
