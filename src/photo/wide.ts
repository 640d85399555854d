import { byteOf, linearOf } from "./light.ts";
import type { Photo } from "./types.ts";

// From linear Display P3 to linear sRGB, both under D65 (CSS Color 4, 17).
const rows = [
  [1.2249402, -0.2249402, 0],
  [-0.0420569, 1.0420569, 0],
  [-0.0196376, -0.0786361, 1.0982735],
] as const;

/** A photo whose bytes are meant for Display P3, in sRGB; what sRGB can't show is held at its edge. */
export function fromWide({ width, height, rgba }: Photo): Photo {
  const made = new Uint8ClampedArray(rgba);
  for (let at = 0; at < made.length; at += 4) {
    const red = linearOf[rgba[at] ?? 0] ?? 0;
    const green = linearOf[rgba[at + 1] ?? 0] ?? 0;
    const blue = linearOf[rgba[at + 2] ?? 0] ?? 0;
    for (let channel = 0; channel < 3; channel += 1) {
      const row = rows[channel] ?? rows[0];
      const light = row[0] * red + row[1] * green + row[2] * blue;
      made[at + channel] = byteOf(light);
    }
  }
  return { width, height, rgba: made };
}
