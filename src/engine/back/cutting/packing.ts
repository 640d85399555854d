import type { Box, Outline, Spot } from "./types.ts";

/**
 * Guillotine packing: each piece goes into the corner of a free rectangle, which is then parted by two full cuts.
 * Whatever comes out can be cut with a ruler, edge to edge, one cut after another.
 *
 * Same pieces, same sheets, same rule: same result. And a rule places the pieces of one sheet in the same way
 * whether or not other sheets and their pieces are there: ties are broken by size alone.
 */
export type Rule = {
  /** Largest first, by this measure. */
  readonly order: (outline: Outline) => number;
  /** Smallest wins among the free rectangles. */
  readonly fit: (free: Box, width: number, height: number) => number;
  readonly split: Split;
  /** `first`: fill one sheet before the next is begun; `best`: the best fit on any. */
  readonly sheets: "first" | "best";
};

/** Whether the first of the two cuts runs across the whole free rectangle (else down it). */
export type Split = (free: Box, width: number, height: number) => boolean;

type Free = Box & { readonly sheet: number };
type Choice = { readonly free: number; readonly turned: boolean; readonly score: number };

export function pack(
  sheets: readonly Outline[],
  outlines: readonly Outline[],
  rule: Rule,
): readonly (Spot | null)[] {
  const free: Free[] = sheets.map(({ width, height }, sheet) => ({ sheet, x: 0, y: 0, width, height }));
  const spots: (Spot | null)[] = outlines.map(() => null);
  for (const index of sorted(outlines, rule)) {
    const outline = outlines[index];
    if (outline !== undefined) spots[index] = lay(outline, { sheets, free, rule });
  }
  return spots;
}

function sorted(outlines: readonly Outline[], { order }: Rule): readonly number[] {
  const keys = outlines.map((outline) => [order(outline), longer(outline), shorter(outline)] as const);
  return outlines
    .map((_, index) => index)
    .sort((a, b) => {
      const [first = [0, 0, 0], second = [0, 0, 0]] = [keys[a], keys[b]];
      return second[0] - first[0] || second[1] - first[1] || second[2] - first[2] || a - b;
    });
}

type Bench = { readonly sheets: readonly Outline[]; readonly free: Free[]; readonly rule: Rule };

function lay(outline: Outline, bench: Bench): Spot | null {
  const choice = bestFree(outline, bench);
  const into = choice === null ? undefined : bench.free[choice.free];
  if (choice === null || into === undefined) return null;
  const [width, height] = sides(outline, choice.turned);
  bench.free.splice(choice.free, 1, ...rest(into, width, height, bench.rule.split));
  return { sheet: into.sheet, x: into.x, y: into.y, turned: choice.turned };
}

function bestFree(outline: Outline, { sheets, free, rule }: Bench): Choice | null {
  let best: (Choice & { sheet: number }) | null = null;
  for (const [index, box] of free.entries()) {
    const fixed = outline.directed === true || sheets[box.sheet]?.directed === true;
    for (const turned of fixed ? straight : bothWays) {
      const [width, height] = sides(outline, turned);
      if (width > box.width || height > box.height) continue;
      const found = { free: index, turned, score: rule.fit(box, width, height), sheet: box.sheet };
      if (best === null || comesBefore(found, best, rule)) best = found;
    }
  }
  return best;
}

const straight = [false] as const;
const bothWays = [false, true] as const;

type Found = { readonly sheet: number; readonly score: number };

function comesBefore(found: Found, best: Found, { sheets }: Rule): boolean {
  if (sheets === "first" && found.sheet !== best.sheet) return found.sheet < best.sheet;
  return found.score < best.score;
}

function rest(into: Free, width: number, height: number, split: Split): readonly Free[] {
  const across = split(into, width, height);
  const right: Free = {
    sheet: into.sheet,
    x: into.x + width,
    y: into.y,
    width: into.width - width,
    height: across ? height : into.height,
  };
  const below: Free = {
    sheet: into.sheet,
    x: into.x,
    y: into.y + height,
    width: across ? into.width : width,
    height: into.height - height,
  };
  return [right, below].filter((box) => box.width > 0 && box.height > 0);
}

export function sides(outline: Outline, turned: boolean): readonly [width: number, height: number] {
  return turned ? [outline.height, outline.width] : [outline.width, outline.height];
}

export function longer(outline: Outline): number {
  return Math.max(outline.width, outline.height);
}

export function shorter(outline: Outline): number {
  return Math.min(outline.width, outline.height);
}
