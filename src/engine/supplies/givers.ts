import { cutFrom } from "../back/index.ts";
import { type Job, rowOf, type SizedPiece } from "../cloth/index.ts";
import {
  type ClothSource,
  canBeCut,
  type LayoutNode,
  type LeftLong,
  leavesOf,
  leftLongOf,
  nodesOf,
  type Path,
  type Placed,
  type PlacedLeaf,
  partsOf,
  placedAt,
  provedUpTo,
  takenSizeOf,
  withoutGivers,
} from "../layout/index.ts";
import { inches, type Length, larger, type Size, times } from "../length/index.ts";
import { isLongJoin, leftLongIn } from "../work/index.ts";
import { sheetsOf, sourceCloth } from "./source-cloth.ts";
import { type Want, wantsOf } from "./wants.ts";

/** Sewing drifts by as much a seam, steadily: 23 seams make 1 7/16 in (`work/errors`, published). */
const driftOfSeam: Length = inches(1, 16);
/**
 * Leaves one part long beside every long join, so that what sewing adds or takes is trimmed off it and nothing has to
 * be eased: plain cloth that lies along the join, else a leftover with as much to spare, else the end of a row. Where
 * nothing can be left long, nothing is. The layout's cloth must have its sources; sizes and places stay as they are.
 */
export function withGivers(layout: LayoutNode, job: Job): LayoutNode {
  return bestGiven(layout, job).layout;
}

/** So many small cells are tried for each that is bought, and so many are bought. */
const mostTried = 8;
const mostBought = 5;

/**
 * Gives all plain cloth its source (`sourceCloth`) and leaves parts long beside long joins. Where her lengths are so
 * nearly used up that nothing of them can be left long, cells of theirs are bought instead, as few as will do: first
 * what is cut off after quilting, then what is small, then what lies beside such a join. Never where she wishes to buy
 * nothing.
 */
export function withClothAndGivers(layout: LayoutNode, job: Job): LayoutNode {
  const sourced = sourceCloth(layout, job);
  const first = bestGiven(sourced, job);
  if (job.wishes.includes("buy-nothing")) return first.layout;
  const sparing = boughtForGivers(layout, first, { job, keeps: false });
  // What a bought cell leaves free of her lengths may go to one that was bought, and that one gave.
  const best =
    sparing.without.length === 0 ? sparing : boughtForGivers(layout, sparing, { job, keeps: true });
  return best.layout;
}

/** `keeps`: what is bought already is bought still. */
type Buying = { readonly job: Job; readonly keeps: boolean };

function boughtForGivers(layout: LayoutNode, first: Given, { job, keeps }: Buying): Given {
  let best = first;
  const bought: Path[] = keeps ? boughtIn(first.layout, job) : [];
  const most = bought.length + mostBought;
  for (let now = best; best.without.length > 0 && bought.length < most; ) {
    const tries = boughtToo(now, job).map((path) => {
      return () => ({ path, given: bestGiven(sourceCloth(layout, job, [...bought, path]), job) });
    });
    const next = fewestWithout(tries, now.without.length);
    if (next === null) break;
    now = next.given;
    bought.push(next.path);
    if (now.without.length < best.without.length) best = now;
  }
  return best;
}

function boughtIn(layout: LayoutNode, job: Job): Path[] {
  return wantsOf(layout, job).flatMap(({ path, source }) => (source === "buy" ? [path] : []));
}

type Bought = { readonly path: Path; readonly given: Given };

/** The first with fewer than so many; else the best of those with no more, since two may help where one doesn't. */
function fewestWithout(tries: readonly (() => Bought)[], most: number): Bought | null {
  let best: Bought | null = null;
  for (const find of tries) {
    const one = find();
    const count = one.given.without.length;
    if (count < most) return one;
    if (count === most) best ??= one;
  }
  return best;
}

/** What is cut off after quilting, what is small, and what lies beside a join without a giver. */
function boughtToo({ layout, without }: Given, job: Job): readonly Path[] {
  const isBeside = (cell: Path) => without.some(({ parts }) => parts.some((part) => isWithin(cell, part)));
  const cells = cellsOfHers(layout, job);
  return [...cells.slice(0, mostTried), ...cells.slice(mostTried).filter(isBeside)];
}

/** Plain cells of her lengths: those that are cut off after quilting, then the small before the large. */
function cellsOfHers(layout: LayoutNode, job: Job): readonly Path[] {
  const cells = leavesOf(layout, job).filter(({ node }) => node.kind === "cloth" && node.source !== "buy");
  const shown = ({ node, x, y }: PlacedLeaf) => {
    const area = node.width * node.height;
    return job.top === null || isWithinReach({ x, y, ...node }, layout, job.top) ? area : 0;
  };
  return cells.toSorted((a, b) => shown(a) - shown(b)).map(({ path }) => path);
}

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Does any of it lie on the top, which lies in the middle of the back? */
function isWithinReach(cell: Box, back: Size, top: Size): boolean {
  const [left, upper] = [(back.width - top.width) / 2, (back.height - top.height) / 2];
  return (
    cell.x < left + top.width &&
    cell.x + cell.width > left &&
    cell.y < upper + top.height &&
    cell.y + cell.height > upper
  );
}

function bestGiven(layout: LayoutNode, job: Job): Given {
  const bare = withoutGivers(layout);
  const seams = longSeamsOf(bare, job);
  const plainest = given(bare, seams, { job, order: ({ rank }) => rank });
  if (plainest.without.length === 0) return plainest;
  // Her lengths are nearly used up: first whatever takes least of them.
  const sparing = given(bare, seams, { job, order: ({ takes }) => takes });
  return sparing.without.length < plainest.without.length ? sparing : plainest;
}

/** And the long seams that nothing is left long beside. */
type Given = { readonly layout: LayoutNode; readonly without: readonly LongSeam[] };
type Taste = { readonly job: Job; readonly order: (way: Way) => number };

function given(bare: LayoutNode, seams: readonly LongSeam[], taste: Taste): Given {
  const refused = new Set<string>();
  const known: Known = new Map();
  let found: Given = { layout: bare, without: [] };
  for (const seam of seams) {
    // Rather a little than nothing.
    const tries = seam.leave.map((leave) => ({ ...taste, ...seam, leave, refused, known }));
    const layout = firstOf(tries, (asked) => giverFor(asked, found.layout));
    found = layout === null ? { ...found, without: [...found.without, seam] } : { ...found, layout };
  }
  return found;
}

function firstOf<T, R>(items: readonly T[], find: (item: T) => R | null): R | null {
  for (const item of items) {
    const result = find(item);
    if (result !== null) return result;
  }
  return null;
}

type Side = "width" | "height";

/** A long seam: the two parts that it joins, which side of theirs runs along it, and how much is to be left. */
type LongSeam = {
  readonly parts: readonly [Path, Path];
  readonly along: Side;
  /** What is best left, then what will do. */
  readonly leave: readonly Length[];
};

function longSeamsOf(layout: LayoutNode, job: Job): readonly LongSeam[] {
  return nodesOf(layout, job).flatMap(({ node, path }) => {
    if (node.kind !== "join") return [];
    const along = node.direction === "beside" ? "height" : "width";
    return node.parts.slice(1).flatMap((after, index): LongSeam[] => {
      const before = node.parts[index];
      const seams = Math.max(seamsEndingOn(before, along, "last"), seamsEndingOn(after, along, "first"));
      if (!isLongJoin(node[along], seams)) return [];
      return [
        {
          parts: [
            [...path, index],
            [...path, index + 1],
          ],
          along,
          leave: toLeave(seams, job),
        },
      ];
    });
  });
}

/** How many seams of a part end on its first (left, upper) or last side that runs along `along`. */
function seamsEndingOn(part: LayoutNode | undefined, along: Side, side: "first" | "last"): number {
  return part === undefined ? 0 : touching(part, along, side) - 1;
}

function touching(node: LayoutNode, along: Side, side: "first" | "last"): number {
  // A seam inside a unit may end in the middle of its side.
  if (node.kind !== "join") return node.kind === "unit" ? 2 : 1;
  if (sideAlong(node) === along)
    return node.parts.reduce((count, part) => count + touching(part, along, side), 0);
  const outer = side === "first" ? node.parts[0] : node.parts.at(-1);
  return outer === undefined ? 1 : touching(outer, along, side);
}

function sideAlong({ direction }: Extract<LayoutNode, { kind: "join" }>): Side {
  return direction === "beside" ? "width" : "height";
}

/** The less, or the more where so many seams end on the join that they may drift by more. */
function toLeave(seams: number, { unit }: Job): readonly Length[] {
  const { usual, most } = leftLongIn[unit];
  return times(driftOfSeam, seams) > usual ? [most, usual] : [usual];
}

// ---- Which part gives

/** Leaves that are left long together; the lower its rank, the plainer the sewing. */
type Way = {
  readonly leaves: readonly PlacedLeaf[];
  readonly rank: number;
  /** Trimmed within its row, before anything can be joined to that. */
  readonly isFitted: boolean;
  /** By how much wider or higher, and how far: as area, of cloth that she has. */
  readonly takes: number;
};

/** A length of hers may have nothing left over, so what is bought comes first of two alike. */
const ranks = { already: -0.5, cloth: 0, ofHers: 0.5, piece: 1, stacked: 1, atTheEnd: 2, within: 8 } as const;

/** One seam to find a giver for. */
type Asked = Taste & {
  readonly parts: readonly [Path, Path];
  readonly along: Side;
  readonly leave: Length;
  /** Cells, by path and side, for which there is no cloth; as more is left long there won't be. */
  readonly refused: Set<string>;
  readonly known: Known;
};

/** The ways found in a part, by where it lies and what is asked of it; they hold as long as it is the same part. */
type Known = Map<string, { readonly node: LayoutNode; readonly ways: readonly Way[] }>;

/** Null: nothing beside this seam can be left long. */
function giverFor(asked: Asked, layout: LayoutNode): LayoutNode | null {
  // Of two alike the one behind: it lies beside the next seam too.
  const ways = asked.parts
    .toReversed()
    .flatMap((path) => waysOf(placedAt(layout, path, asked.job), asked))
    .toSorted((a, b) => asked.order(a) - asked.order(b));
  if (ways.some(({ leaves }) => leaves.every((leaf) => isLeft(leaf, asked)))) return layout;
  const open = ways.filter(
    ({ leaves }) => !leaves.some(({ path }) => asked.refused.has(askedOf(path, asked))),
  );
  return firstOf(open, ({ leaves }) => {
    const longer = leftLong(layout, leaves, asked);
    return canBeCutSo(longer, leaves, asked) ? longer : null;
  });
}

function isWithin(cell: Path, part: Path): boolean {
  return part.every((index, depth) => cell[depth] === index);
}

function nameOf(path: Path): string {
  return path.join(" ");
}

function isLeft({ node }: PlacedLeaf, { along, leave }: Asked): boolean {
  return (leftLongOf(node)[along] ?? 0) >= leave;
}

/** A part or cell, and what is asked of it. */
function askedOf(path: Path, { along, leave }: Asked): string {
  return `${along} ${leave} ${nameOf(path)}`;
}

function waysOf(part: Placed | undefined, asked: Asked): readonly Way[] {
  if (part === undefined) return [];
  const key = askedOf(part.path, asked);
  const before = asked.known.get(key);
  if (before?.node === part.node) return before.ways;
  const ways = waysIn(part, asked);
  asked.known.set(key, { node: part.node, ways });
  return ways;
}

function waysIn(part: Placed, asked: Asked): readonly Way[] {
  const { node } = part;
  if (node.kind !== "join") return wayOfLeaf({ ...part, node }, asked);
  const inner = partsOf(part).map((one) => waysOf(one, asked));
  return sideAlong(node) === asked.along ? anyOf(inner) : allOf(inner);
}

/** Of a row along the seam one part gives: at its end it is trimmed with the row, within it before the row is closed. */
function anyOf(parts: readonly (readonly Way[])[]): readonly Way[] {
  return parts.flatMap((ways, index) => {
    const isEnd = index === 0 || index === parts.length - 1;
    const more = isEnd ? ranks.atTheEnd : ranks.within;
    return ways.map((way) => ({ ...way, rank: way.rank + more, isFitted: way.isFitted || !isEnd }));
  });
}

/** What lies side by side across the seam has to give together, and stand over until the seam is sewn. */
function allOf(parts: readonly (readonly Way[])[]): readonly Way[] {
  const best = parts.flatMap(
    (ways) => ways.filter(({ isFitted }) => !isFitted).toSorted((a, b) => a.rank - b.rank)[0] ?? [],
  );
  if (best.length < parts.length) return [];
  return [
    {
      leaves: best.flatMap((way) => way.leaves),
      rank: ranks.stacked + Math.max(...best.map(({ rank }) => rank)),
      isFitted: false,
      takes: best.reduce((sum, { takes }) => sum + takes, 0),
    },
  ];
}

function wayOfLeaf(leaf: PlacedLeaf, asked: Asked): readonly Way[] {
  const { along, leave, job } = asked;
  const { node, cutWidth, cutHeight } = leaf;
  const way = { leaves: [leaf], isFitted: false, takes: 0 };
  if (isLeft(leaf, asked)) return [{ ...way, rank: ranks.already }];
  if (node.kind === "piece" && spareOf(leaf, along, job) >= leave) return [{ ...way, rank: ranks.piece }];
  if (node.kind !== "cloth") return [];
  if (node.source === "buy") return [{ ...way, rank: ranks.cloth }];
  const across = along === "width" ? cutHeight : cutWidth;
  return [{ ...way, rank: ranks.ofHers, takes: leave * across }];
}

/** A piece that gives several cells has nothing to spare that one of them could count on. */
function spareOf({ node, cutWidth, cutHeight }: PlacedLeaf, along: Side, { pieces }: Job): number {
  if (node.kind !== "piece" || node.copy !== undefined) return 0;
  const piece = rowOf(pieces, node.piece);
  if (piece === undefined || !hasCorners(piece) || piece.keep === "whole") return 0;
  const wide = along === "width";
  return (wide !== node.turned ? piece.width : piece.height) - (wide ? cutWidth : cutHeight);
}

function hasCorners(piece: Job["pieces"][number]): piece is SizedPiece {
  return piece.kind !== "crumbs" && piece.kind !== "triangle";
}

type Left = Pick<Asked, "along" | "leave">;

function leftLong(layout: LayoutNode, leaves: readonly PlacedLeaf[], left: Left): LayoutNode {
  return leaves.reduce((given, { path }) => changedAt(given, path, (leaf) => leftLongAs(leaf, left)), layout);
}

function changedAt(node: LayoutNode, path: Path, change: (node: LayoutNode) => LayoutNode): LayoutNode {
  const [index, ...rest] = path;
  if (index === undefined || node.kind !== "join") return change(node);
  const changed = (part: LayoutNode, at: number) => (at === index ? changedAt(part, rest, change) : part);
  return { ...node, parts: node.parts.map(changed) };
}

function leftLongAs(leaf: LayoutNode, { along, leave }: Left): LayoutNode {
  if (leaf.kind !== "piece" && leaf.kind !== "cloth") return leaf;
  const before = leaf.leftLong?.[along];
  const left: LeftLong = { ...leaf.leftLong, [along]: before === undefined ? leave : larger(before, leave) };
  return { ...leaf, leftLong: left };
}

// ---- Whether there is cloth for it

function canBeCutSo(layout: LayoutNode, changed: readonly PlacedLeaf[], asked: Asked): boolean {
  return changed.every(({ node, path }) => {
    const isThere = node.kind !== "cloth" || isClothFor(path, node.source, layout, asked.job);
    if (!isThere) asked.refused.add(askedOf(path, asked));
    return isThere;
  });
}

function isClothFor(path: Path, source: ClothSource, layout: LayoutNode, job: Job): boolean {
  if (source !== "buy") return canBeCutFrom(source, wantsOf(layout, job), job);
  const cell = placedAt(layout, path, job);
  if (cell === undefined || cell.node.kind === "join") return false;
  const { width, height } = takenSizeOf({ ...cell, node: cell.node });
  return Math.min(width, height) <= job.clothWidth;
}

/** As the cutting plan lays it out, and as the checker does. */
function canBeCutFrom(
  { piece: id, copy }: Exclude<ClothSource, "buy">,
  wants: readonly Want[],
  { pieces }: Job,
): boolean {
  const piece = rowOf(pieces, id);
  // A length she wants left whole, or only trimmed, is no more than its cell.
  if (piece === undefined || piece.kind === "crumbs" || piece.keep !== "cut") return false;
  const sheet = sheetsOf(piece).find((one) => one.copy === copy);
  if (sheet === undefined) return false;
  const mayTurn = sheet.directed !== true;
  const cells = wants
    .filter(({ source }) => source !== "buy" && source.piece === id && source.copy === copy)
    .map(({ width, height }, key) => ({ key, width, height, mayTurn }));
  const isLaid = cutFrom([sheet], cells).every((place) => place !== null);
  // As few as that the checker proves either way, so a way is enough.
  return isLaid && (cells.length <= provedUpTo || canBeCut(cells, [sheet]));
}
