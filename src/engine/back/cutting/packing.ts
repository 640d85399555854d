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
  return packed(sheets, outlines, { rule, mayMiss: true }) ?? [];
}

/** The same where each has to find a place: null, without looking further, when one doesn't. */
export function packAll(
  sheets: readonly Outline[],
  outlines: readonly Outline[],
  rule: Rule,
): readonly Spot[] | null {
  return packed(sheets, outlines, { rule, mayMiss: false }) as readonly Spot[] | null;
}

type Packing = { readonly rule: Rule; readonly mayMiss: boolean };

function packed(
  sheets: readonly Outline[],
  outlines: readonly Outline[],
  { rule, mayMiss }: Packing,
): readonly (Spot | null)[] | null {
  const free: Free[] = sheets.map(({ width, height }, sheet) => ({ sheet, x: 0, y: 0, width, height }));
  const spots: (Spot | null)[] = outlines.map(() => null);
  const order = sorted(outlines, rule);
  const least = leastFrom(order, outlines);
  for (const [at, index] of order.entries()) {
    const leastLater = least[at + 1] ?? 0;
    const spot = lay(outlines[index] as Outline, { sheets, free, rule, leastLater });
    if (spot === null && !mayMiss) return null;
    spots[index] = spot;
  }
  return spots;
}

/** The least side of what comes from each place in this order on: what is narrower than that will hold none of it. */
function leastFrom(order: readonly number[], outlines: readonly Outline[]): Float64Array {
  const least = new Float64Array(order.length + 1).fill(Number.POSITIVE_INFINITY);
  for (let at = order.length - 1; at >= 0; at--) {
    const outline = outlines[order[at] as number] as Outline;
    least[at] = Math.min(least[at + 1] as number, shorter(outline));
  }
  return least;
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

type Bench = {
  readonly sheets: readonly Outline[];
  readonly free: Free[];
  readonly rule: Rule;
  /** The least side of all that is still to be laid after this one. */
  readonly leastLater: number;
};

function lay(outline: Outline, bench: Bench): Spot | null {
  const choice = bestFree(outline, bench);
  const into = choice === null ? undefined : bench.free[choice.free];
  if (choice === null || into === undefined) return null;
  const [width, height] = sides(outline, choice.turned);
  const left = rest(into, width, height, bench.rule.split);
  bench.free.splice(choice.free, 1, ...left.filter((box) => shorter(box) >= bench.leastLater));
  return { sheet: into.sheet, x: into.x, y: into.y, turned: choice.turned };
}

function bestFree(outline: Outline, { sheets, free, rule }: Bench): Choice | null {
  const upright = { turned: false, width: outline.width, height: outline.height };
  const lying = { turned: true, width: outline.height, height: outline.width };
  let best: (Choice & { sheet: number }) | null = null;
  for (let index = 0; index < free.length; index++) {
    const box = free[index] as Free;
    const fixed = outline.directed === true || sheets[box.sheet]?.directed === true;
    for (let way = upright; ; way = lying) {
      if (way.width <= box.width && way.height <= box.height) {
        const score = rule.fit(box, way.width, way.height);
        if (best === null || comesBefore(box.sheet, score, best, rule))
          best = { free: index, turned: way.turned, score, sheet: box.sheet };
      }
      if (fixed || way.turned) break;
    }
  }
  return best;
}

type Found = { readonly sheet: number; readonly score: number };

function comesBefore(sheet: number, score: number, best: Found, { sheets }: Rule): boolean {
  if (sheets === "first" && sheet !== best.sheet) return sheet < best.sheet;
  return score < best.score;
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
