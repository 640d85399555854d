// The most of a small heap that can be sewn into a region untrimmed, by looking at everything. The proofs in the data
// allow plain cloth of any width; sewn, no cell is narrower than the smallest. Shares nothing with the solver.
//
// For every part of the heap: the regions that it fills, with plain cloth. Where it fills one of width w, it fills
// those of w + smallest and more, a piece of cloth sewn on. So for each height the widths are a least one, a few among
// the next ones, and then all: a number and a mask. Two parts sewn side by side fill, at each height, the sums.

export type SmallHeap = {
  readonly width: number;
  readonly height: number;
  readonly smallest: number;
  readonly items: readonly { readonly w: number; readonly h: number; readonly copies: number }[];
};

/** Area of the leftovers that show, in the square of the heap's unit. Lengths are whole numbers, `smallest` at most 8. */
export function mostSewable(heap: SmallHeap): number {
  if (heap.smallest > 8) throw new Error("a mask holds eight widths");
  const parts = partsOf(heap);
  const fills: (Fills | null)[] = [];
  let most = 0;
  for (const part of parts) {
    const filled = fillsOf(part, parts, fills, heap);
    fills.push(filled);
    if (filled !== null && part.area > most && has(filled.byHeight, heap.height, heap.width, heap.smallest))
      most = part.area;
  }
  return most;
}

/** Some of the heap: how many of each item, as one number in mixed digits. */
type Part = { readonly counts: readonly number[]; readonly area: number; readonly pieces: number };

/** At each height (or width): the least width, and which of the next ones; 0 is none. */
type Spans = { readonly least: Int32Array; readonly mask: Uint8Array };
type Fills = { readonly byHeight: Spans; readonly byWidth: Spans };

function partsOf({ items }: SmallHeap): Part[] {
  let parts: Part[] = [{ counts: [], area: 0, pieces: 0 }];
  // The first item's digit is the lowest, so that the number of a part is the sum of its own parts' numbers.
  for (const { w, h, copies } of items) {
    const before = parts;
    parts = Array.from({ length: copies + 1 }, (_, count) =>
      before.map(({ counts, area, pieces }) => ({
        counts: [...counts, count],
        area: area + count * w * h,
        pieces: pieces + count,
      })),
    ).flat();
  }
  return parts;
}

function fillsOf(part: Part, parts: readonly Part[], fills: readonly (Fills | null)[], heap: SmallHeap) {
  if (part.pieces === 0 || part.area > heap.width * heap.height) return null;
  const at = new Grid(heap.width, heap.height);
  if (part.pieces === 1) placeSingle(part, heap, at);
  const own = fills.length;
  for (let one = 1; one <= own - one; one++) {
    const [a, b] = [fills[one] ?? null, fills[own - one] ?? null];
    if (a === null || b === null || !isWithin(parts[one], part)) continue;
    at.addBeside(a.byHeight, b.byHeight);
    at.addBelow(a.byWidth, b.byWidth);
  }
  return at.closed(heap.smallest);
}

function isWithin(inner: Part | undefined, outer: Part): boolean {
  return inner?.counts.every((count, item) => count <= (outer.counts[item] ?? 0)) ?? false;
}

function placeSingle(part: Part, { items }: SmallHeap, at: Grid): void {
  const item = items[part.counts.indexOf(1)];
  if (item === undefined) return;
  at.set(item.w, item.h);
  at.set(item.h, item.w);
}

function has({ least, mask }: Spans, across: number, along: number, smallest: number): boolean {
  const over = along - (least[across] ?? 0);
  const bits = mask[across] ?? 0;
  return bits !== 0 && over >= 0 && (over >= smallest || ((bits >> over) & 1) === 1);
}

/** Which regions up to a largest one are filled. */
class Grid {
  readonly #width: number;
  readonly #height: number;
  readonly #cells: Uint8Array;
  #any = false;

  constructor(width: number, height: number) {
    this.#width = width;
    this.#height = height;
    this.#cells = new Uint8Array((width + 1) * (height + 1));
  }

  set(width: number, height: number): void {
    if (width > this.#width || height > this.#height) return;
    this.#cells[height * (this.#width + 1) + width] = 1;
    this.#any = true;
  }

  addBeside(a: Spans, b: Spans): void {
    for (let height = 1; height <= this.#height; height++)
      addSums(a, b, height, this.#width, (width) => this.set(width, height));
  }

  addBelow(a: Spans, b: Spans): void {
    for (let width = 1; width <= this.#width; width++)
      addSums(a, b, width, this.#height, (height) => this.set(width, height));
  }

  /** With plain cloth sewn on, to the side and below; null where nothing is filled. */
  closed(smallest: number): Fills | null {
    if (!this.#any) return null;
    const row = this.#width + 1;
    for (let height = 0; height <= this.#height; height++)
      this.#spread(height * row, 1, this.#width, smallest);
    for (let width = 0; width <= this.#width; width++) this.#spread(width, row, this.#height, smallest);
    return {
      byHeight: this.#spans({ lines: this.#height, start: row, step: 1, most: this.#width }, smallest),
      byWidth: this.#spans({ lines: this.#width, start: 1, step: row, most: this.#height }, smallest),
    };
  }

  #spread(start: number, step: number, most: number, smallest: number): void {
    let first = 0;
    while (first <= most && this.#cells[start + first * step] === 0) first += 1;
    for (let along = first + smallest; along <= most; along++) this.#cells[start + along * step] = 1;
  }

  #spans(lines: { lines: number; start: number; step: number; most: number }, smallest: number): Spans {
    const least = new Int32Array(lines.lines + 1);
    const mask = new Uint8Array(lines.lines + 1);
    for (let line = 0; line <= lines.lines; line++) {
      const at = (along: number) => this.#cells[line * lines.start + along * lines.step] === 1;
      let first = 0;
      while (first <= lines.most && !at(first)) first += 1;
      least[line] = first;
      for (let next = 0; next < smallest && first + next <= lines.most; next++)
        if (at(first + next)) mask[line] = (mask[line] ?? 0) | (1 << next);
    }
    return { least, mask };
  }
}

/** All sums of a width of `a` and one of `b`, up to `most`; those with cloth sewn on come later. */
function addSums(a: Spans, b: Spans, line: number, most: number, add: (along: number) => void): void {
  const [ofA, ofB] = [a.mask[line] ?? 0, b.mask[line] ?? 0];
  const least = (a.least[line] ?? 0) + (b.least[line] ?? 0);
  if (ofA === 0 || ofB === 0 || least > most) return;
  for (let sums = sumsOf(ofA, ofB), along = least; sums !== 0; sums >>= 1, along++) if (sums & 1) add(along);
}

/** Bit i + j for every bit i of one mask and every bit j of the other. */
function sumsOf(a: number, b: number): number {
  let sums = 0;
  for (let shift = 0; shift < 8; shift++) if ((a >> shift) & 1) sums |= b << shift;
  return sums;
}
