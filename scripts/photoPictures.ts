// Lays out what can't be measured well, photographs and measures it, and puts the pictures with what came of each into
// docs/photo.md: npm run pictures:photo
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { hexOf } from "../src/engine/cloth/index.ts";
import {
  type MeasuredPhoto,
  measurePhoto,
  type Photo,
  type Vision,
  writeOverlay,
} from "../src/photo/index.ts";
import { photoWords } from "../src/words/index.ts";
import { type HardPhotograph, type Hardship, hardPhotographs } from "../test/made/hardPhotographs.ts";
import { render } from "../test/made/render.ts";
import { pixelOf, type Spot } from "../test/made/scene.ts";

type Row = {
  readonly lies: string;
  readonly comes: string;
  readonly marked: string;
  readonly of: Hardship | null;
};

const rows: readonly Row[] = [
  {
    lies: "cloth of nearly the floor's color",
    comes: "missed, or a side that is a little off",
    marked: "near the floor's color; a side is hard to see; not at all where it is missed",
    of: "near-floor",
  },
  {
    lies: "a print with parts like the floor",
    comes: "the outline stops at the print, or the piece falls into several",
    marked: "a side is hard to see; may be two pieces; may be one with the piece beside it",
    of: "print-like-floor",
  },
  {
    lies: "two pieces that touch",
    comes: "cut apart where their outline turns inwards; the side between them is a guess",
    marked: "may be one with the piece beside it; may be two pieces",
    of: "touching",
  },
  {
    lies: "two pieces of one cloth, side against side",
    comes: "one piece: nothing in the photo says otherwise",
    marked: "not marked",
    of: "side-by-side",
  },
  {
    lies: "a block with patches like the floor",
    comes:
      "put together again where two squares meet in a corner or hardly a gap lies between; else its parts",
    marked: "may be two pieces; may be one with the piece beside it",
    of: "block",
  },
  {
    lies: "a piece under a card, or that the photo cuts off",
    comes: "its size is what is seen of it",
    marked: "cut off",
    of: "under-card",
  },
  {
    lies: "a mat's printed lines",
    comes: "taken out of the picture of the floor; one that runs along a side may still shift that side",
    marked: "a side is hard to see, or not marked where the side is clear",
    of: "mat",
  },
  {
    lies: "folds, and cloth that stands up",
    comes: "measured as it is seen from above, as if it were flat",
    marked: "not marked: the photo can't tell",
    of: "folded",
  },
  {
    lies: "frayed threads",
    comes: "a side lies through their middle; 1/32 in is taken off before rounding down",
    marked: "not marked",
    of: "frayed",
  },
  {
    lies: "a phone that bends light to please",
    comes: "sizes hold, colors drift (below the photo: the cloth, and what was measured)",
    marked: "not marked: the photo can't tell",
    of: "bright-phone",
  },
  {
    lies: "a curled card",
    comes: "all sizes are a little off",
    marked: "the photo is marked: a card's markers lie where a flat one's would not",
    of: null,
  },
];

const folder = "pictures/photo";
const document = fileURLToPath(new URL("../docs/photo.md", import.meta.url));
const [begins, ends] = ["<!-- what fails: written by npm run pictures:photo -->\n", "\n<!-- so far -->"];
const wide = 360;
const swatchHigh = 48;

const load = createRequire(import.meta.url);
const vision: Vision = await load("@techstark/opencv-js");
const words = photoWords("en-US");

mkdirSync(fileURLToPath(new URL(`../docs/${folder}`, import.meta.url)), { recursive: true });
const hard = new Map(hardPhotographs().map((one) => [one.name, one]));
const lines: string[] = [];
for (const row of rows) lines.push(await lineOf(row));
const heads = ["What lies there", "What comes of it", "How it is marked", "Laid so, and measured"];
const table = [heads, heads.map(() => "---")].map((cells) => `| ${cells.join(" | ")} |`);
const text = readFileSync(document, "utf8");
const [from, to] = [text.indexOf(begins), text.indexOf(ends)];
if (from < 0 || to < from) throw new Error("docs/photo.md has no place for the table");
writeFileSync(document, text.slice(0, from) + begins + [...table, ...lines].join("\n") + text.slice(to));

async function lineOf({ lies, comes, marked, of }: Row): Promise<string> {
  const photograph = of === null ? undefined : hard.get(of);
  const shown = photograph === undefined ? "" : await shownIn(photograph, lies);
  return `| ${[lies, comes, marked, shown].join(" | ")} |`;
}

async function shownIn(photograph: HardPhotograph, alternative: string): Promise<string> {
  const { name, sizes } = photograph;
  const { jpeg, photo } = await taken(photograph);
  const measured = measurePhoto(photo, vision, { printed: 1 });
  const picture = await outlined(photograph, measured, jpeg);
  await picture.toFile(fileURLToPath(new URL(`../docs/${folder}/${name}.jpg`, import.meta.url)));
  process.stdout.write(`${words.found(name, measured)}\n`);
  const cut = `Cut: ${sizes.map(([width, height]) => `${width} × ${height} in`).join(", ")}.`;
  return [`![${alternative}](${folder}/${name}.jpg)`, cut, ...foundIn(measured)].join("<br>");
}

function foundIn(measured: MeasuredPhoto): readonly string[] {
  const found = words.found("", measured).split("\n").slice(1);
  return found.length === 0
    ? ["Found: nothing."]
    : found.map((line) => `Found: ${line.replace(/^ *\d+\. /, "")}.`);
}

async function taken({ scene }: HardPhotograph): Promise<{ readonly jpeg: Buffer; readonly photo: Photo }> {
  const { width, height, rgba } = render(scene);
  const raw = { width, height, channels: 4 } as const;
  const jpeg = await sharp(rgba, { raw }).removeAlpha().jpeg({ quality: 90 }).toBuffer();
  const data = await sharp(jpeg).ensureAlpha().raw().toBuffer();
  return { jpeg, photo: { width, height, rgba: data } };
}

/** The part that matters, with what was found drawn over it. */
async function outlined(photograph: HardPhotograph, measured: MeasuredPhoto, jpeg: Buffer) {
  const { scene, around, swatch } = photograph;
  const { width, height } = scene;
  const picture = `data:image/jpeg;base64,${jpeg.toString("base64")}`;
  const label = (_: unknown, number: number) => String(number);
  const svg = writeOverlay({ photo: { width, height }, pieces: measured.pieces, picture, label });
  const [half, half2] = [around.size[0] / 2, around.size[1] / 2];
  const corner = (x: number, y: number): Spot => pixelOf(scene, [around.middle[0] + x, around.middle[1] + y]);
  const [[left, top], [right, bottom]] = [corner(-half, -half2), corner(half, half2)];
  const box = {
    left: Math.round(left),
    top: Math.round(top),
    width: Math.round(right - left),
    height: Math.round(bottom - top),
  };
  const cropped = await sharp(Buffer.from(svg)).extract(box).resize({ width: wide }).png().toBuffer();
  const under =
    swatch === undefined
      ? []
      : [swatch, measured.pieces[0]?.colours[0]?.lab].flatMap((lab) => (lab ? [hexOf(lab)] : []));
  return withSwatches(cropped, under).jpeg({ quality: 78 });
}

function withSwatches(png: Buffer, colours: readonly string[]) {
  if (colours.length === 0) return sharp(png);
  const each = wide / colours.length;
  const rects = colours.map(
    (colour, at) => `<rect x="${at * each}" width="${each}" height="${swatchHigh}" fill="${colour}"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${swatchHigh}">${rects.join("")}</svg>`;
  return sharp(png)
    .extend({ bottom: swatchHigh, background: "#fff" })
    .composite([{ input: Buffer.from(svg), gravity: "south" }]);
}
