import type { ExactBranch, ExactFill, ExactTask } from "../../src/engine/layout/index.ts";

/**
 * The most a region can hold, for up to six pieces: tries every cut of every rectangle and every way to share the pieces
 * out between its two sides. Takes nothing from the search that it is held against.
 */
export function mostBySlicing({ width, height, items, smallest = 1 }: ExactTask): number {
  const pieces = items.flatMap((item) => new Array<ExactTask["items"][number]>(item.copies).fill(item));
  if (pieces.length > 6) throw new Error("six pieces at most");
  const known = new Map<number, boolean>();

  const fills = (set: number, w: number, h: number): boolean => {
    const key = (set * 64 + w) * 64 + h;
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = asCell(set, w, h) || (areaOf(set) <= w * h && canBeCut(set, w, h));
    known.set(key, answer);
    return answer;
  };
  const asCell = (set: number, w: number, h: number): boolean => {
    if (Math.min(w, h) < smallest) return false;
    if (set === 0) return true;
    const piece = pieces[31 - Math.clz32(set)];
    if (piece === undefined || (set & (set - 1)) !== 0) return false;
    const upright = piece.width === w && piece.height === h;
    return upright || (piece.turns && piece.width === h && piece.height === w);
  };
  const canBeCut = (set: number, w: number, h: number): boolean => {
    if (set === 0) return false;
    for (let one = set; ; one = (one - 1) & set) {
      const other = set ^ one;
      for (let x = 1; x < w; x++) if (fills(one, x, h) && fills(other, w - x, h)) return true;
      for (let y = 1; y < h; y++) if (fills(one, w, y) && fills(other, w, h - y)) return true;
      if (one === 0) return false;
    }
  };
  const areaOf = (set: number) => total(set, ({ width: w, height: h }) => w * h);
  const total = (set: number, figure: (piece: ExactTask["items"][number]) => number) =>
    pieces.reduce((sum, piece, index) => sum + ((set >> index) & 1 ? figure(piece) : 0), 0);

  const sets = Array.from({ length: 2 ** pieces.length }, (_, set) => set);
  return Math.max(
    0,
    ...sets.filter((set) => fills(set, width, height)).map((set) => total(set, ({ value }) => value)),
  );
}

/** What is wrong with a filling: its tree is the region, cut through from edge to edge, each cell what it says. */
export function fillingProblems(
  { width, height, items, smallest = 1 }: ExactTask,
  { tree, value }: ExactFill,
): string[] {
  const problems: string[] = [];
  const used = items.map(() => 0);
  const say = (isWrong: boolean, what: string) => {
    if (isWrong) problems.push(what);
  };
  const look = (branch: ExactBranch): void => {
    // A region that is too narrow itself, and holds nothing, is left as it is.
    if (branch === tree && branch.kind === "plain") return;
    say(Math.min(branch.width, branch.height) < smallest, "a cell is too narrow");
    if (branch.kind === "join") lookAtJoin(branch);
    if (branch.kind === "item") lookAtItem(branch);
  };
  const lookAtItem = (branch: ExactBranch & { kind: "item" }): void => {
    const item = items[branch.item];
    if (item === undefined) {
      say(true, "no such item");
      return;
    }
    used[branch.item] = (used[branch.item] ?? 0) + 1;
    const [w, h] = branch.turned ? [item.height, item.width] : [item.width, item.height];
    say(branch.turned && !item.turns, "an item lies on its side");
    say(w !== branch.width || h !== branch.height, "a cell is not its item's size");
  };
  const lookAtJoin = ({ beside, parts, ...size }: ExactBranch & { kind: "join" }): void => {
    const along = parts.reduce((sum, part) => sum + (beside ? part.width : part.height), 0);
    say(parts.length < 2, "a join of one");
    say(along !== (beside ? size.width : size.height), "the parts are not as long as the join");
    say(
      parts.some((part) => (beside ? part.height !== size.height : part.width !== size.width)),
      "a seam does not go from edge to edge",
    );
    for (const part of parts) look(part);
  };
  look(tree);
  say(tree.width !== width || tree.height !== height, "the tree is not the region");
  say(
    used.some((count, item) => count > (items[item]?.copies ?? 0)),
    "more copies than there are",
  );
  const counted = used.reduce((sum, count, item) => sum + count * (items[item]?.value ?? 0), 0);
  say(counted !== value, `it counts ${counted}, not ${value}`);
  return problems;
}
