import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { colourDifference, type Lab } from "../src/engine/cloth/index.ts";
import type { Photo } from "../src/photo/index.ts";
import { photograph } from "../test/made/photographs.ts";
import { render } from "../test/made/render.ts";
import { pixelOf } from "../test/made/scene.ts";

// Photographs with their truth: rendered by number, or from a folder of NAME.jpg, each with its NAME.json.

export type Place = readonly [number, number];

export type TrueOutline = {
  readonly type: string;
  readonly print: string;
  /** In the photo, in pixels. */
  readonly outline: readonly Place[];
  /** In inches, the shorter first; none of what is neither rectangle nor triangle. */
  readonly sizes: readonly number[];
  readonly lab: Lab;
  /** To the floor, ΔE00. */
  readonly contrast: number;
  readonly touches: boolean;
};

export type Known = {
  readonly name: string;
  readonly group: string;
  readonly floor: string;
  readonly tone: "linear" | "phone";
  readonly markers: readonly number[];
  readonly pieces: readonly TrueOutline[];
  readonly photo: () => Promise<Photo>;
};

/** Rendered photographs; those once rendered lie in `kept`, if one is named. */
export function rendered(seeds: readonly number[], kept: string | null): readonly Known[] {
  return seeds.map((seed) => knownOf(seed, kept));
}

function knownOf(seed: number, kept: string | null): Known {
  const { group, floor, scene, pieces, quality } = photograph(seed);
  const jpeg = async () => {
    const { width, height, rgba } = render(scene);
    return sharp(rgba, { raw: { width, height, channels: 4 } })
      .removeAlpha()
      .jpeg({ quality })
      .toBuffer();
  };
  return {
    name: String(seed),
    group,
    floor,
    tone: (scene.tone ?? 0) > 0 ? "phone" : "linear",
    markers: scene.cards.flatMap(({ first }) =>
      first < 10 ? [first] : [first, first + 1, first + 2, first + 3],
    ),
    pieces: pieces.map((piece) => ({ ...piece, outline: piece.outline.map((spot) => pixelOf(scene, spot)) })),
    photo: async () => decoded(kept === null ? await jpeg() : await keptIn(join(kept, `${seed}.jpg`), jpeg)),
  };
}

async function keptIn(file: string, make: () => Promise<Buffer>): Promise<Buffer> {
  if (!existsSync(file)) {
    mkdirSync(join(file, ".."), { recursive: true });
    writeFileSync(file, await make());
  }
  return readFileSync(file);
}

async function decoded(jpeg: Buffer): Promise<Photo> {
  const { data, info } = await sharp(jpeg).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, rgba: data };
}

/** A folder's own form of truth. */
type Written = {
  readonly cam: {
    f: number;
    cx: number;
    cy: number;
    k1: number;
    k2: number;
    R: readonly number[];
    C: readonly number[];
  };
  readonly sheets: readonly { readonly marks: readonly { readonly id: number }[] }[];
  readonly pieces: readonly WrittenPiece[];
  readonly bgLab: readonly number[];
  readonly sheetMode: string;
  readonly bg: string;
};
type WrittenPiece = {
  readonly type: string;
  readonly kind: string;
  readonly poly: readonly Place[];
  readonly dims?: readonly number[] | null;
  readonly lab: readonly number[];
};

export function inFolder(folder: string): readonly Known[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith(".jpg"))
    .map((file) => {
      const written: Written = JSON.parse(readFileSync(join(folder, file.replace(/jpg$/, "json")), "utf8"));
      return {
        name: file.replace(/\.jpg$/, ""),
        group: written.sheetMode === "one" ? "one-sheet" : "good",
        floor: written.bg,
        tone: "linear",
        markers: written.sheets.flatMap(({ marks }) => marks.map(({ id }) => id)),
        pieces: written.pieces.map((piece) => pieceOf(piece, written)),
        photo: () => decoded(readFileSync(join(folder, file))),
      };
    });
}

function pieceOf({ type, kind, poly, dims, lab }: WrittenPiece, written: Written): TrueOutline {
  const types: Readonly<Record<string, string>> = { tri: "triangle", rect: "rectangle" };
  return {
    type: types[type] ?? type,
    print: kind,
    outline: poly.map((place) => inPhoto(written, place)),
    sizes: (dims ?? []).toSorted((one, other) => one - other),
    lab: labFrom(lab),
    contrast: colourDifference(labFrom(lab), labFrom(written.bgLab)),
    touches: false,
  };
}

function labFrom([l = 0, a = 0, b = 0]: readonly number[]): Lab {
  return { l, a, b };
}

/** As the folder's own description of its camera says. */
function inPhoto({ cam: { f, cx, cy, k1, k2, R, C } }: Written, [X, Y]: Place): Place {
  const d = [X - (C[0] ?? 0), Y - (C[1] ?? 0), -(C[2] ?? 0)];
  const p = [0, 1, 2].map((row) => d.reduce((sum, value, k) => sum + (R[3 * row + k] ?? 0) * value, 0));
  const [x, y] = [(p[0] ?? 0) / (p[2] ?? 1), (p[1] ?? 0) / (p[2] ?? 1)];
  const r2 = x * x + y * y;
  const s = 1 + k1 * r2 + k2 * r2 * r2;
  return [cx + f * x * s, cy + f * y * s];
}
