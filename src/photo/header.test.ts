import { readFileSync } from "node:fs";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { checkPhotoFile } from "./header.ts";

const picture = sharp({
  create: {
    width: 400,
    height: 300,
    channels: 3,
    noise: { type: "gaussian", mean: 120, sigma: 40 },
    background: "#777",
  },
});
const jpeg = new Uint8Array(await picture.clone().jpeg().toBuffer());
const png = new Uint8Array(await picture.clone().png().toBuffer());
const heic = new Uint8Array(readFileSync("test/data/photos/scene.heic"));

/** The size in a PNG's header, made another. */
function sized(width: number, height: number): Uint8Array {
  const bytes = png.slice();
  const view = new DataView(bytes.buffer);
  view.setUint32(16, width);
  view.setUint32(20, height);
  return bytes;
}

describe("a photo's file, before it is unpacked", () => {
  it.each([
    ["JPEG", jpeg, "jpeg"],
    ["PNG", png, "png"],
    ["HEIC", heic, "heic"],
    ["what a camera put behind the end", new Uint8Array([...jpeg, ...new Uint8Array(2000)]), "jpeg"],
  ])("is taken: %s", (_, bytes, type) => {
    expect(checkPhotoFile(bytes)).toMatchObject({ ok: true, value: { type } });
  });

  it.each([
    ["words", new TextEncoder().encode("kind,width,height\nsquare,5,5\n"), "not-a-photo"],
    ["half a JPEG", jpeg.slice(0, jpeg.length / 2), "cut-short"],
    ["a PNG without its last bytes", png.slice(0, -20), "cut-short"],
    ["more pixels than can be held", sized(9000, 9000), "too-large"],
  ])("is refused: %s", (_, bytes, kind) => {
    expect(checkPhotoFile(bytes)).toMatchObject({ ok: false, error: { kind } });
  });
});
