import { describe, expect, it } from "vitest";
import { jobOf } from "../../../test/made/backs.ts";
import { inches, type Length, length } from "../length/index.ts";
import { compose } from "./compose.ts";
import type { PiecedRegion, Region } from "./region.ts";
import { siteOf } from "./site.ts";
import { cloth, pieced } from "./sketch.ts";
import { isSound } from "./sound.ts";
import { styles } from "./types.ts";

const bed = jobOf({ top: [60, 80], method: "frame" });
const inch = 8128;

type Spot = { readonly region: Region; readonly x: number; readonly y: number };

function spotsIn(region: Region, x = 0, y = 0): Spot[] {
  if (region.kind !== "join") return [{ region, x, y }];
  let along = 0;
  return region.parts.flatMap((part) => {
    const at = region.direction === "beside" ? spotsIn(part, x + along, y) : spotsIn(part, x, y + along);
    along += region.direction === "beside" ? part.width : part.height;
    return at;
  });
}

function piecedIn(region: Region): PiecedRegion[] {
  return spotsIn(region).flatMap(({ region: part }) => (part.kind === "pieced" ? [part] : []));
}

function expectTiles(region: Region): void {
  if (region.kind !== "join") return;
  const beside = region.direction === "beside";
  const along = region.parts.reduce((sum, part) => sum + (beside ? part.width : part.height), 0);
  expect(along).toBe(beside ? region.width : region.height);
  for (const part of region.parts) {
    expect(beside ? part.height : part.width).toBe(beside ? region.height : region.width);
    expectTiles(part);
  }
}

const sites = [
  { name: "bed, long-arm frame", job: bed },
  {
    name: "bed with two lengths",
    job: jobOf({
      top: [60, 80],
      method: "frame",
      lengths: [
        [44, 70],
        [42, 90],
      ],
    }),
  },
  { name: "lap quilt, home machine", job: jobOf({ top: [48, 60], method: "machine" }) },
  { name: "by hand", job: jobOf({ top: [60, 70], method: "hand" }) },
  { name: "king", job: jobOf({ top: [104, 100], method: "frame" }) },
  { name: "baby", job: jobOf({ top: [30, 40], method: "machine" }) },
  { name: "back alone, cushion", job: jobOf({ back: [18, 18] }) },
  { name: "back alone, runner", job: jobOf({ back: [14, 60] }) },
];

describe.each(sites)("styles for a $name", ({ job }) => {
  it.each(styles)("%s tiles the layout", (style) => {
    for (const variant of [0, 1, 2, 3]) {
      const region = compose(job, style, variant);
      expect(region.width).toBe(job.back.width - 2 * job.seam);
      expect(region.height).toBe(job.back.height - 2 * job.seam);
      expectTiles(region);
      expect(spotsIn(region).some(({ region: part }) => part.kind !== "cloth")).toBe(true);
    }
  });

  it.each(styles)("%s is cut from cloth that is wide enough", (style) => {
    for (const { region } of spotsIn(compose(job, style))) {
      if (region.kind !== "cloth") continue;
      const short = Math.min(region.width, region.height) + 2 * job.seam;
      expect(short).toBeLessThanOrEqual(job.clothWidth);
    }
  });

  it.each(styles)("%s keeps pieced cloth out of the outer ring", (style) => {
    const site = siteOf(job);
    const ring = { x: site.ringX * job.step, y: site.ringY * job.step };
    const layout = compose(job, style);
    for (const { region, x, y } of spotsIn(layout)) {
      if (region.kind === "cloth") continue;
      expect(x).toBeGreaterThanOrEqual(ring.x);
      expect(y).toBeGreaterThanOrEqual(ring.y);
      expect(x + region.width).toBeLessThanOrEqual(layout.width - ring.x);
      expect(y + region.height).toBeLessThanOrEqual(layout.height - ring.y);
    }
  });
});

// Proportions of practised quilters for a back of 68 × 88 (common practice).
describe("proportions on a bed quilt", () => {
  it("the ring is 1¾ in on a frame: pieced cloth ends 2 in outside the top", () => {
    const site = siteOf(bed);
    expect([site.ringX * bed.step, site.ringY * bed.step]).toEqual([inches(7, 4), inches(7, 4)]);
  });

  it("the ring is 1¼ in at home, none by hand and none without a top", () => {
    const home = siteOf(jobOf({ top: [48, 60], method: "machine" }));
    expect(home.ringX * bed.step).toBe(inches(5, 4));
    expect(siteOf(jobOf({ top: [48, 60], method: "hand" })).ringX).toBe(0);
    expect(siteOf(jobOf({ back: [54, 66] })).ringX).toBe(0);
  });

  it("an insert is one row 8 to 16 in deep, its middle off the centre", () => {
    const [row, ...others] = piecedIn(compose(bed, "insert-across"));
    expect(others).toEqual([]);
    expect(row?.height).toBeGreaterThanOrEqual(inches(8));
    expect(row?.height).toBeLessThanOrEqual(inches(16));
    const column = piecedIn(compose(bed, "insert-down"))[0];
    expect(column?.width).toBeGreaterThanOrEqual(inches(8));
    expect(column?.width).toBeLessThanOrEqual(inches(16));
  });

  it("the halves of a cross's row down are 6 in or more apart, or it is a T", () => {
    const down = spotsIn(compose(bed, "cross")).filter(
      ({ region }) => region.kind === "pieced" && region.height > region.width,
    );
    expect(down.length).toBeGreaterThanOrEqual(1);
    const [one, other] = down;
    if (one !== undefined && other !== undefined) {
      expect(Math.abs(one.x - other.x)).toBeGreaterThanOrEqual(inches(6));
    }
  });

  it("strippy has two or three pieced rows", () => {
    const rows = piecedIn(compose(bed, "strippy"));
    expect(rows.length).toBeGreaterThanOrEqual(2);
    expect(rows.length).toBeLessThanOrEqual(3);
  });

  it("chunks are 14 to 30 in deep and seams of neighbour rows 3 in apart", () => {
    const chunks = spotsIn(compose(bed, "chunks")).filter(({ region }) => region.kind === "pieced");
    expect(chunks.length).toBeGreaterThanOrEqual(2);
    for (const one of chunks) {
      expect(one.region.height).toBeGreaterThanOrEqual(inches(14));
      expect(one.region.height).toBeLessThanOrEqual(inches(30));
      for (const other of chunks) {
        if (other.y !== one.y + one.region.height) continue;
        expect(Math.abs(one.x - other.x)).toBeGreaterThanOrEqual(inches(3));
      }
    }
  });

  it("the middle sits off the centre with 8 in or more of plain round it", () => {
    const spots = spotsIn(compose(bed, "centred")).filter(({ region }) => region.kind === "pieced");
    const left = Math.min(...spots.map(({ x }) => x));
    const right = Math.max(...spots.map(({ x, region }) => x + region.width));
    const width = bed.back.width - 2 * bed.seam;
    expect(left).toBeGreaterThanOrEqual(8 * inch);
    expect(width - right).toBeGreaterThanOrEqual(8 * inch);
    expect(Math.abs(left - (width - right))).toBeGreaterThan(2 * inch);
  });

  it("squares are equal", () => {
    const sides = spotsIn(compose(bed, "squares"))
      .filter(({ region }) => region.kind !== "cloth")
      .flatMap(({ region }) => [region.width, region.height]);
    expect(new Set(sides).size).toBe(1);
  });

  it("a line of blocks holds five to eight, its blocks in their own size", () => {
    const blocks = jobOf({
      top: [60, 80],
      method: "frame",
      blocks: [
        [12.5, 6],
        [9, 4],
      ],
    });
    const placed = spotsIn(compose(blocks, "block-line")).filter(({ region }) => region.kind === "block");
    expect(placed.length).toBeGreaterThanOrEqual(5);
    expect(placed.length).toBeLessThanOrEqual(8);
    const own: Length[] = [inches(12), inches(17, 2)];
    for (const { region } of placed) expect(own).toContain(region.height);
  });

  it("her lengths serve before cloth is bought", () => {
    const withLengths = jobOf({
      top: [60, 80],
      method: "frame",
      lengths: [
        [44, 90],
        [44, 90],
      ],
    });
    const plain = spotsIn(compose(withLengths, "insert-down")).flatMap(({ region }) =>
      region.kind === "cloth" && region.role === "plain" ? [region.fabric] : [],
    );
    expect(plain.length).toBeGreaterThan(0);
    expect(plain).not.toContain(withLengths.plain);
  });
});

describe("isSound", () => {
  const site = siteOf(bed);

  it("refuses what does not fill the site, gaps, and slivers", () => {
    const half = cloth(site.width, 100);
    expect(isSound(pieced(site.width, site.height), site)).toBe(true);
    expect(isSound(pieced(site.width, site.height - 1), site)).toBe(false);
    const short = {
      kind: "join",
      beside: false,
      parts: [half, half],
      width: site.width,
      height: site.height,
    } as const;
    expect(isSound({ ...short, parts: [half, cloth(site.width, site.height - 101)] }, site)).toBe(false);
    const sliver = [cloth(site.width, 5), cloth(site.width, site.height - 5)];
    expect(isSound({ ...short, parts: sliver }, site)).toBe(false);
  });

  it("lets a spacer at the edge be an inch", () => {
    const ring = cloth(site.width, Number(length(8)), "spacer");
    const parts = [ring, cloth(site.width, site.height - 8)];
    expect(
      isSound({ kind: "join", beside: false, parts, width: site.width, height: site.height }, site),
    ).toBe(true);
  });
});
