import { describe, expect, it } from "vitest";
import { jobOf } from "../../../test/made/backs.ts";
import { inches } from "../length/index.ts";
import { naturalDepth, naturalDepths } from "./natural.ts";
import { boughtFor } from "./plainParts.ts";
import { type SitePiece, siteOf } from "./site.ts";

const job = jobOf({ top: [60, 80], method: "frame" });
const inch = inches(1) / job.step;

/** Finished sizes in inches, as one would measure them in the back. */
const alike = (width: number, height: number, count: number, more: Partial<SitePiece> = {}): SitePiece => ({
  width: width * inch,
  height: height * inch,
  count,
  upright: false,
  cut: false,
  trim: () => 0,
  ...more,
});
const site = (...pieces: SitePiece[]) => ({ ...siteOf(job), pieces });
const depths = { least: 4 * inch, most: 16 * inch, long: 64 * inch };

// Derived: a row that like pieces fill, one to four above each other, has no plain strip along them.
describe("the depth of a row", () => {
  it.each([
    { name: "two charm squares high", pieces: [alike(4.5, 4.5, 40)], wanted: 10, deep: 9 },
    { name: "as deep as the blocks", pieces: [alike(12, 12, 5)], wanted: 11, deep: 12 },
    {
      name: "of the pieces most of the row can be made of",
      pieces: [alike(9.5, 9.5, 6), alike(11, 11, 1)],
      wanted: 10.5,
      deep: 9.5,
    },
    {
      name: "a print with an up as it stands",
      pieces: [alike(8, 12, 6, { upright: true })],
      wanted: 9,
      deep: 12,
    },
    { name: "the wanted one, where nothing fills any", pieces: [], wanted: 10, deep: 10 },
  ])("$name", ({ pieces, wanted, deep }) => {
    expect(naturalDepth(site(...pieces), wanted * inch, depths) / inch).toBe(deep);
  });

  it("stays within what the style allows", () => {
    const all = naturalDepths(site(alike(3, 20, 9), alike(15, 18, 9)), 30 * inch, depths);
    for (const { deep, full } of all) {
      expect(deep).toBeGreaterThanOrEqual(depths.least);
      expect(deep).toBeLessThanOrEqual(depths.most);
      expect(full).toBeLessThanOrEqual(1);
    }
  });
});

describe("plain parts", () => {
  const long = (width: number, height: number) => ({
    ...siteOf(job),
    lengths: [{ fabric: "oat", width: width * inch, height: height * inch }],
  });

  // The layout is 67½ in wide: 140 in of a length are two parts of it, 130 in one.
  it("a long length gives more than one", () => {
    expect(boughtFor(long(44, 140), [43 * inch, 30 * inch])).toEqual({ long: 0, seams: 0 });
    expect(boughtFor(long(44, 130), [43 * inch, 30 * inch]).long).toBeGreaterThan(0);
  });

  it("a part deeper than bought cloth is whole where her length is wide enough", () => {
    expect(boughtFor(long(60, 70), [58 * inch])).toEqual({ long: 0, seams: 0 });
    expect(boughtFor(long(30, 70), [58 * inch]).seams).toBe(1);
  });
});
