import { cutFrom, type Sheet, type SheetPlace } from "../back/index.ts";
import type { Job, SizedPiece } from "../cloth/index.ts";
import {
  type ClothSource,
  canBeCut,
  type LayoutNode,
  type LeafNode,
  mapLeaves,
  type Path,
  type UnitCloth,
} from "../layout/index.ts";
import { assert, inches, type Length, length } from "../length/index.ts";
import { usableLengths, type Want, wantsOf } from "./wants.ts";

/**
 * Gives all plain cloth its source: what is of the fabric of one of her lengths is cut from them by cuts from edge
 * to edge, as much area as can be; all else is cloth to buy, and its fabric becomes `job.plain`. Sizes and places
 * stay as they are; the cloth of one unit is of one fabric. The same layout and job give the same sources, whatever the
 * layout said before. `bought`: a cell that is bought whatever she has.
 */
export function sourceCloth(layout: LayoutNode, job: Job, bought: readonly Path[] = []): LayoutNode {
  const wants = wantsOf(layout, job);
  const names = new Set(bought.map((path) => path.join(" ")));
  const apart = [...wants.keys()].filter((index) => names.has(wants[index]?.path.join(" ") ?? ""));
  const sources = sourcesFor(wants, job, new Set(apart));
  const given = wants.map(({ fabric }, index): Given => {
    const source = sources.get(index);
    return source === undefined ? { fabric: job.plain, source: "buy" } : { fabric, source };
  });
  const next = given.values();
  return mapLeaves(layout, (leaf) => sourced(leaf, next));
}

type Given = { readonly fabric: string; readonly source: ClothSource };
type Found = Map<number, Exclude<ClothSource, "buy">>;

/** `bought`: wants that are bought whatever she has. */
function sourcesFor(wants: readonly Want[], job: Job, bought: ReadonlySet<number> = new Set()): Found {
  const lengths = usableLengths(job);
  const found: Found = new Map();
  for (const fabric of new Set(lengths.map((piece) => piece.fabric))) {
    const ofFabric = lengths.filter((piece) => piece.fabric === fabric);
    const wanted = [...wants.entries()].filter(
      ([index, want]) => want.fabric === fabric && !bought.has(index),
    );
    leaveWhole(ofFabric, wanted, found);
    cutUp(ofFabric, wanted, found);
  }
  const mixed = ofMixedUnits(wants, found, job);
  return mixed.length === 0 ? found : sourcesFor(wants, job, new Set([...bought, ...mixed]));
}

/** The triangles round one block are of one fabric: what her lengths can't give a unit whole is bought whole. */
function ofMixedUnits(wants: readonly Want[], found: Found, { plain }: Job): readonly number[] {
  const units = new Map<string, number[]>();
  for (const [index, { path, fabric }] of wants.entries()) {
    // Bought, it is the same fabric.
    if (fabric === plain) continue;
    const name = path.join(" ");
    units.set(name, [...(units.get(name) ?? []), index]);
  }
  return [...units.values()].flatMap((unit) => {
    const hers = unit.filter((index) => found.has(index)).length;
    return hers === 0 || hers === unit.length ? [] : unit;
  });
}

type Wanted = readonly (readonly [index: number, want: Want])[];

function cutUp(lengths: readonly SizedPiece[], wanted: Wanted, found: Found): void {
  const sheets = lengths.filter(({ keep }) => keep === "cut").flatMap(sheetsOf);
  const cells = wanted
    .filter(([index]) => !found.has(index))
    .map(([key, { width, height }]) => ({ key, width, height }));
  const places = cutFrom(sheets, cells).filter((place) => place !== null);
  for (const sheet of sheets) {
    const onIt = places.filter(({ id, copy }) => id === sheet.id && copy === sheet.copy);
    for (const { key } of shownToFit(onIt, sheet)) found.set(key, { piece: sheet.id, copy: sheet.copy });
  }
}

/** A plan's checker lays cells out in its own way; what it cannot show to fit is bought, smallest first. */
function shownToFit(places: readonly SheetPlace[], sheet: Sheet): readonly SheetPlace[] {
  const kept = places.toSorted((a, b) => b.width * b.height - a.width * a.height || a.key - b.key);
  // In the order of the layout, as the checker has them: equal measures are told apart by it.
  const cells = () =>
    kept
      .toSorted((a, b) => a.key - b.key)
      .map(({ width, height, turned }) => ({
        ...(turned ? { width: height, height: width } : { width, height }),
        mayTurn: sheet.directed !== true,
      }));
  while (!canBeCut(cells(), [sheet])) kept.pop();
  return kept;
}

/** One sheet for each of the equal lengths of a row. */
export function sheetsOf({ id, width, height, count, direction }: SizedPiece): readonly Sheet[] {
  return Array.from({ length: count }, (_, index) => ({
    id,
    copy: index + 1,
    width,
    height,
    directed: direction === "one-way",
  }));
}

/** A length she does not want cut up gives one cell: as it is, or with its edges trimmed. Largest cells first. */
function leaveWhole(lengths: readonly SizedPiece[], wanted: Wanted, found: Found): void {
  const largestFirst = wanted.toSorted(([, a], [, b]) => b.width * b.height - a.width * a.height);
  for (const piece of lengths.filter(({ keep }) => keep !== "cut")) {
    for (const { id, copy } of sheetsOf(piece)) {
      const match = largestFirst.find(([index, want]) => !found.has(index) && isUncut(piece, want));
      if (match !== undefined) found.set(match[0], { piece: id, copy });
    }
  }
}

function isUncut(piece: SizedPiece, { width, height }: Want): boolean {
  const upright = isTrimmedTo(piece, piece.width, width) && isTrimmedTo(piece, piece.height, height);
  if (upright || piece.direction === "one-way") return upright;
  return isTrimmedTo(piece, piece.width, height) && isTrimmedTo(piece, piece.height, width);
}

/** Trimmed by at most half an inch or a tenth of that side; not at all when it stays whole. */
function isTrimmedTo({ keep }: SizedPiece, has: Length, wanted: Length): boolean {
  const most = keep === "whole" ? 0 : Math.min(inches(1, 2), length(Math.floor(has / 10)));
  return wanted <= has && has - wanted <= most;
}

function sourced(leaf: LeafNode, given: Iterator<Given>): LeafNode {
  if (leaf.kind === "cloth") return { ...leaf, ...take(given) };
  if (leaf.kind !== "unit") return leaf;
  return { ...leaf, cloth: leaf.cloth.flatMap((cloth) => parted(cloth, given)) };
}

function take(given: Iterator<Given>): Given {
  const next = given.next();
  assert(next.done !== true, "every cloth has one source");
  return next.value;
}

/** Equal rectangles may come from different cloth: one entry for each source, in the order they are first met. */
function parted(cloth: UnitCloth, given: Iterator<Given>): readonly UnitCloth[] {
  const entries = new Map<string, UnitCloth>();
  for (let index = 0; index < cloth.count; index++) {
    const { fabric, source } = take(given);
    const name = source === "buy" ? "buy" : `${source.copy} of ${source.piece}`;
    const count = (entries.get(name)?.count ?? 0) + 1;
    entries.set(name, { ...cloth, fabric, source, count });
  }
  return [...entries.values()];
}
