import { describe, expect, it } from "vitest";
import { fromWide } from "./wide.ts";

const one = (...rgba: number[]) => [...fromWide({ width: 1, height: 1, rgba: Uint8Array.from(rgba) }).rgba];

describe("Display P3 in sRGB", () => {
  // Grey is the same in both; the others by the matrix of CSS Color 4, worked out by hand.
  it.each([
    ["grey", [128, 128, 128, 255], [128, 128, 128, 255]],
    ["black", [0, 0, 0, 255], [0, 0, 0, 255]],
    ["white", [255, 255, 255, 7], [255, 255, 255, 7]],
    ["P3's own red, more than sRGB has", [255, 0, 0, 255], [255, 0, 0, 255]],
  ])("%s", (_, wide, narrow) => {
    expect(one(...wide)).toEqual(narrow);
  });

  it("makes a dull red a little redder", () => {
    const [red = 0, green = 0, blue = 0] = one(180, 90, 80, 255);
    expect(red).toBeGreaterThan(185);
    expect(green).toBeLessThan(90);
    expect(blue).toBeLessThan(80);
  });
});
