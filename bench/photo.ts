import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import sharp from "sharp";
import { colourDifference, type Lab } from "../src/engine/cloth/index.ts";
import { type MeasuredPhoto, type MeasuredPiece, measurePhoto, type Vision } from "../src/photo/index.ts";

// Measures photographs whose truth is known: a folder of NAME.jpg, each with its NAME.json.

type Place = readonly [number, number];
type Truth = {
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
  readonly pieces: readonly TruePiece[];
  readonly bgLab: readonly number[];
  readonly sheetMode: string;
  readonly bg: string;
};
type TruePiece = {
  readonly type: string;
  readonly kind: string;
  readonly poly: readonly Place[];
  readonly dims?: readonly number[];
  readonly lab: readonly number[];
};

const folder = process.argv[2];
if (folder === undefined) throw new Error("Name the folder: npm run bench:photo -- FOLDER");
const load = createRequire(import.meta.url);
const vision: Vision = await load("@techstark/opencv-js");

type Match = { readonly truth: TruePiece; readonly found: MeasuredPiece | null; readonly contrast: number };
const matches: Match[] = [];
let [markersTrue, markersFound, falseIds, falsePieces, all] = [0, 0, 0, 0, 0];
const falseFlagged: boolean[] = [];
const seconds: number[] = [];

for (const file of readdirSync(folder).filter((name) => name.endsWith(".jpg"))) {
  const truth: Truth = JSON.parse(readFileSync(join(folder, file.replace(/jpg$/, "json")), "utf8"));
  const { data, info } = await sharp(join(folder, file))
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const began = process.cpuUsage();
  const measured = measurePhoto({ width: info.width, height: info.height, rgba: data }, vision, {
    printed: 1,
  });
  const used = process.cpuUsage(began);
  seconds.push((used.user + used.system) / 1e6);
  report(file, truth, measured);
}
summary();

function report(file: string, truth: Truth, { cards, residual, warnings, pieces }: MeasuredPhoto): void {
  const ids = truth.sheets.flatMap(({ marks }) => marks.map(({ id }) => id));
  markersTrue += ids.length;
  markersFound += ids.filter((id) => cards.includes(id)).length;
  falseIds += cards.filter((id) => !ids.includes(id)).length;
  const outlines = truth.pieces.map(({ poly }) => poly.map((place) => toPhoto(truth, place)));
  const used = new Set<MeasuredPiece>();
  const here = truth.pieces.map((piece, at): Match => {
    const found = pieces.find((one) => overlapShare(one.pixels, outlines[at] ?? []) > 0.8) ?? null;
    if (found) used.add(found);
    return { truth: piece, found, contrast: colourDifference(lab(piece.lab), lab(truth.bgLab)) };
  });
  const wrong = pieces.filter((piece) => !used.has(piece));
  for (const { kind, measured, check } of wrong)
    process.stdout.write(
      `  false: ${kind} ${measured.width.toFixed(1)} × ${measured.height.toFixed(1)} ${check.join(" ")}\n`,
    );
  falsePieces += wrong.length;
  falseFlagged.push(...wrong.map(({ check }) => check.length > 0));
  all += pieces.length;
  matches.push(...here);
  const count = here.filter(({ found }) => found !== null).length;
  process.stdout.write(
    `${file} ${truth.bg}, ${truth.sheetMode}: ${cards.length} of ${ids.length} markers, residual ${residual?.toFixed(2)} px, ` +
      `${count} of ${here.length} pieces, ${wrong.length} false, ${pieces.filter(({ check }) => check.length > 0).length} marked ` +
      `${warnings.join(" ")}; ${seconds.at(-1)?.toFixed(1)} s\n`,
  );
}

function lab([l = 0, a = 0, b = 0]: readonly number[]): Lab {
  return { l, a, b };
}

/** As the folder's own description of its camera says. */
function toPhoto({ cam: { f, cx, cy, k1, k2, R, C } }: Truth, [X, Y]: Place): Place {
  const d = [X - (C[0] ?? 0), Y - (C[1] ?? 0), -(C[2] ?? 0)];
  const p = [0, 1, 2].map((row) => d.reduce((sum, value, k) => sum + (R[3 * row + k] ?? 0) * value, 0));
  const [x, y] = [(p[0] ?? 0) / (p[2] ?? 1), (p[1] ?? 0) / (p[2] ?? 1)];
  const r2 = x * x + y * y;
  const s = 1 + k1 * r2 + k2 * r2 * r2;
  return [cx + f * x * s, cy + f * y * s];
}

/** The area both share, as a share of the area either covers, counted on a grid. */
function overlapShare(one: readonly Place[], other: readonly Place[]): number {
  const range = (axis: 0 | 1) => {
    const values = [...one, ...other].map((place) => place[axis]);
    return [Math.min(...values), Math.max(...values)] as const;
  };
  const [[left, right], [top, bottom]] = [range(0), range(1)];
  let [both, either] = [0, 0];
  for (let row = 0; row < 80; row += 1)
    for (let column = 0; column < 80; column += 1) {
      const at: Place = [
        left + ((column + 0.5) / 80) * (right - left),
        top + ((row + 0.5) / 80) * (bottom - top),
      ];
      const [a, b] = [isInside(one, at), isInside(other, at)];
      both += Number(a && b);
      either += Number(a || b);
    }
  return both / Math.max(1, either);
}

function isInside(outline: readonly Place[], [x, y]: Place): boolean {
  let inside = false;
  outline.forEach(([ax, ay], at) => {
    const [bx, by] = outline[(at + 1) % outline.length] ?? [ax, ay];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

function summary(): void {
  const good = matches.filter(({ contrast }) => contrast >= 8);
  const found = matches.flatMap(({ truth, found }) => (found && truth.dims ? [{ truth, found }] : []));
  const sides = found
    .filter(({ truth, found }) => kindFits(truth, found))
    .flatMap(({ truth, found }) => {
      const dims = (truth.dims ?? []).toSorted((one, other) => one - other);
      const [w, h] = [found.measured.width, found.measured.height].toSorted((one, other) => one - other);
      return [
        { off: (w ?? 0) - (dims[0] ?? 0), over: Math.min(found.width, found.height) - (dims[0] ?? 0) },
        { off: (h ?? 0) - (dims[1] ?? 0), over: Math.max(found.width, found.height) - (dims[1] ?? 0) },
      ];
    });
  const off = sides.map(({ off }) => Math.abs(off)).toSorted((one, other) => one - other);
  const wrongKind = matches.filter(({ truth, found }) => found && !kindFits(truth, found));
  const badSize = found.filter(({ truth, found }) => {
    const dims = (truth.dims ?? []).toSorted((one, other) => one - other);
    const [w = 0, h = 0] = [found.measured.width, found.measured.height].toSorted(
      (one, other) => one - other,
    );
    return Math.max(Math.abs(w - (dims[0] ?? 0)), Math.abs(h - (dims[1] ?? 0))) > 0.1;
  });
  const colours = matches.flatMap(({ truth, found }) => (found ? [meanDifference(truth, found)] : []));
  const flagged =
    matches.filter(({ found }) => found && found.check.length > 0).length +
    falseFlagged.filter(Boolean).length;
  const wrong = [...falseFlagged, ...badSize.map(({ found }) => found.check.length > 0)];
  const lines = [
    `markers ${markersFound} of ${markersTrue}, false ids ${falseIds}`,
    `pieces found: contrast ≥ 8 ${rate(good)}; 5–8 ${rate(matches.filter(({ contrast }) => contrast >= 5 && contrast < 8))}; under 5 ${rate(matches.filter(({ contrast }) => contrast < 5))}`,
    `false pieces ${falsePieces} of ${all}; of another class ${wrongKind.length} of ${matches.filter(({ found }) => found).length}`,
    `sides off: median ${at(off, 0.5)}, 95 % ${at(off, 0.95)}, 99 % ${at(off, 0.99)} in; stated over truth by .02 in: ${sides.filter(({ over }) => over > 0.02).length} of ${sides.length}`,
    `colour, mean of the cloth: median ${at(
      colours.toSorted((a, b) => a - b),
      0.5,
    )}, 95 % ${at(
      colours.toSorted((a, b) => a - b),
      0.95,
    )}`,
    `marked ${flagged} of ${all}; of the wrong ones ${wrong.filter(Boolean).length} of ${wrong.length}`,
    `seconds of one core: ${seconds.map((value) => value.toFixed(1)).join(" ")}`,
  ];
  process.stdout.write(`${lines.join("\n")}\n`);
}

function kindFits({ type, poly }: TruePiece, { kind }: MeasuredPiece): boolean {
  if (type === "tri") return kind === "triangle";
  if (type === "quad") return kind === "odd";
  return poly.length === 4 && kind !== "odd" && kind !== "triangle";
}

function rate(some: readonly Match[]): string {
  return `${some.filter(({ found }) => found !== null).length} of ${some.length}`;
}

function at(sorted: readonly number[], share: number): string {
  return (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0).toFixed(3);
}

/** In linear light, as the truth's mean is. */
function meanDifference({ lab: truth }: TruePiece, { colours }: MeasuredPiece): number {
  const inverse = (value: number) => (value > 6 / 29 ? value ** 3 : 3 * (6 / 29) ** 2 * (value - 4 / 29));
  const sums = colours.reduce(
    (sum, { lab: { l, a, b }, share }) => {
      const y = (l + 16) / 116;
      return [
        sum[0] + share * inverse(y + a / 500),
        sum[1] + share * inverse(y),
        sum[2] + share * inverse(y - b / 200),
      ] as const;
    },
    [0, 0, 0] as readonly [number, number, number],
  );
  const root = (value: number) =>
    value > (6 / 29) ** 3 ? Math.cbrt(value) : value / (3 * (6 / 29) ** 2) + 4 / 29;
  const [x, y, z] = [root(sums[0]), root(sums[1]), root(sums[2])];
  return colourDifference({ l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) }, lab(truth));
}
