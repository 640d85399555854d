import type { Sort } from "./sorts.ts";

/**
 * How many of each sort a part takes, packed into whole words. Each count has one bit more than it needs: where two
 * tallies are added, a count beyond its copies takes that bit away, so that all are held against the heap at once.
 */
export class Tallies {
  readonly words: number;
  readonly #places: readonly { readonly word: number; readonly shift: number }[];
  readonly #guards: Int32Array;
  readonly #copiesAndGuards: Int32Array;

  constructor(sorts: readonly Sort[]) {
    const places: { word: number; shift: number }[] = [];
    let [word, shift] = [0, 0];
    for (const { copies } of sorts) {
      const bits = bitsOf(copies) + 1;
      if (shift + bits > 32) [word, shift] = [word + 1, 0];
      places.push({ word, shift });
      shift += bits;
    }
    this.words = word + 1;
    this.#places = places;
    this.#guards = new Int32Array(this.words);
    this.#copiesAndGuards = new Int32Array(this.words);
    for (const [sort, { copies }] of sorts.entries()) this.#allow(sort, copies);
  }

  #allow(sort: number, copies: number): void {
    const { word, shift } = this.#places[sort] ?? { word: 0, shift: 0 };
    const guard = 1 << (shift + bitsOf(copies));
    this.#guards[word] = (this.#guards[word] ?? 0) | guard;
    this.#copiesAndGuards[word] = (this.#copiesAndGuards[word] ?? 0) | guard | (copies << shift);
  }

  /** One of a sort alone. */
  writeOne(sort: number, into: Int32Array): void {
    const { word, shift } = this.#places[sort] ?? { word: 0, shift: 0 };
    into.fill(0);
    into[word] = 1 << shift;
  }

  /** The sum of two tallies that lie in `all`; false where there are not so many copies. */
  writeSum(all: Int32Array, one: number, other: number, into: Int32Array): boolean {
    const { words } = this;
    for (let word = 0; word < words; word++) {
      const sum = ((all[one * words + word] ?? 0) + (all[other * words + word] ?? 0)) | 0;
      const guards = this.#guards[word] ?? 0;
      if ((((this.#copiesAndGuards[word] ?? 0) - sum) & guards) !== guards) return false;
      into[word] = sum;
    }
    return true;
  }
}

function bitsOf(count: number): number {
  return 32 - Math.clz32(count);
}
