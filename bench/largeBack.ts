import { createHash } from "node:crypto";
import sharp from "sharp";
import { inches } from "../src/engine/length/index.ts";
import { lengthAsMeasured, newProject, readTableRows, writeProject } from "../src/files/index.ts";

const fabrics = ["clay", "ink", "moss", "oat", "rust", "teal", "plum", "sage", "navy", "cream"];
const rows = 400;
const each = 5;
const pictures = 50;

/** A back as large as one plan holds: 2000 pieces in 400 rows, 50 of which have a picture of their cloth. */
export async function largeBack(): Promise<Buffer> {
  const table = ["kind,width,height,count,fabric", ...Array.from({ length: rows }, (_, at) => lineOf(at))];
  const read = readTableRows(new TextEncoder().encode(table.join("\n")), "in");
  const cloth = await Promise.all(Array.from({ length: pictures }, (_, at) => clothOf(at)));
  const sums = cloth.map((bytes) => createHash("sha256").update(bytes).digest("hex"));
  const project = newProject({ title: "Large back", createdAt: 0 });
  const measure = (count: number) => [lengthAsMeasured(inches(count), "in"), null, null] as const;
  const leftovers = read.rows.map((one, at) => {
    const picture = sums[at];
    return { ...one, id: `leftover-${at + 1}`, ...(picture === undefined ? {} : { picture }) };
  });
  const size = { ...project.size, topWidths: measure(90), topHeights: measure(100) };
  const byId = cloth.map((bytes, at) => [sums[at] ?? "", new Uint8Array(bytes)] as const);
  return Buffer.from(writeProject({ ...project, leftovers, size }, 0, new Map(byId)));
}

function lineOf(at: number): string {
  const fabric = fabrics[at % fabrics.length];
  const [width, height] = [2 + (at % 9) / 2, 4 + (at % 13)];
  return `rectangle,${width},${height},${each},${fabric} ${Math.floor(at / fabrics.length)}`;
}

/** As much as a photograph of woven cloth: fine noise, so that it packs no better. */
async function clothOf(seed: number): Promise<Buffer> {
  const [width, height] = [640, 480];
  const rgb = Buffer.alloc(3 * width * height);
  let state = seed + 1;
  for (let at = 0; at < rgb.length; at += 1) {
    state = (state * 1103515245 + 12345) % 2 ** 31;
    rgb[at] = 90 + (seed % 60) + ((state >> 16) % 48);
  }
  return sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 80 })
    .toBuffer();
}
