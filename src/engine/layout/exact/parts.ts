import type { Tallies } from "./tallies.ts";

/** How a part was made. */
export const made = { single: 0, beside: 1, below: 2 } as const;
export type Made = (typeof made)[keyof typeof made];

/** A part that is about to be laid by; its tally stands in `tally`. */
export type Draft = {
  width: number;
  height: number;
  value: number;
  worth: number;
  /** No arrangement that this is a part of counts more. */
  most: number;
  made: Made;
  /** The two parts it is joined of; for a single the sort and the face. */
  one: number;
  other: number;
};

/** More would take more memory than a browser's worker should. */
const mostParts = 2 ** 20;

/**
 * Rectangles sewn of items and plain cloth, each once: of two with the same tally, the one that fits wherever the other
 * does is enough. Held in columns, since there may be a million of them.
 */
export class Parts {
  size = 0;
  width = new Int32Array(1024);
  height = new Int32Array(1024);
  value = new Float64Array(1024);
  worth = new Float64Array(1024);
  most = new Float64Array(1024);
  made = new Uint8Array(1024);
  one = new Int32Array(1024);
  other = new Int32Array(1024);
  /** 1: another part took its place. */
  beaten = new Uint8Array(1024);
  tallies: Int32Array;
  /** Of the next part. */
  readonly tally: Int32Array;
  readonly #words: number;
  readonly #smallest: number;
  /** The next part with the same tally; −1: none. */
  #next = new Int32Array(1024);
  /** The last part with each tally; −1: none. */
  #heads = new Int32Array(4096).fill(-1);
  #headCount = 0;

  constructor({ words }: Tallies, smallest: number) {
    this.#words = words;
    this.#smallest = smallest;
    this.tallies = new Int32Array(1024 * words);
    this.tally = new Int32Array(words);
  }

  get isFull(): boolean {
    return this.size >= mostParts;
  }

  /** The new part's number; −1 where one like it, or better, is there. */
  lay(draft: Draft): number {
    const slot = this.#slot(this.tally, 0);
    const head = this.#heads[slot] ?? -1;
    for (let like = head; like >= 0; like = this.#next[like] ?? -1) {
      if (this.beaten[like] === 1) continue;
      const [wider, taller] = [
        draft.width - (this.width[like] ?? 0),
        draft.height - (this.height[like] ?? 0),
      ];
      if (this.#canBeFilled(wider) && this.#canBeFilled(taller)) return -1;
      if (this.#canBeFilled(-wider) && this.#canBeFilled(-taller)) this.beaten[like] = 1;
    }
    const part = this.#append(draft);
    this.#next[part] = head;
    this.#heads[slot] = part;
    if (head < 0) this.#headCount += 1;
    if (2 * this.#headCount > this.#heads.length) this.#spreadOut();
    return part;
  }

  /** Is there nothing to fill, or room for plain cloth? */
  #canBeFilled(gap: number): boolean {
    return gap === 0 || gap >= this.#smallest;
  }

  #append(draft: Draft): number {
    if (this.size === this.width.length) this.#grow();
    const part = this.size;
    this.size += 1;
    this.width[part] = draft.width;
    this.height[part] = draft.height;
    this.value[part] = draft.value;
    this.worth[part] = draft.worth;
    this.most[part] = draft.most;
    this.made[part] = draft.made;
    this.one[part] = draft.one;
    this.other[part] = draft.other;
    this.tallies.set(this.tally, part * this.#words);
    return part;
  }

  #grow(): void {
    const room = 2 * this.size;
    this.width = grown(this.width, new Int32Array(room));
    this.height = grown(this.height, new Int32Array(room));
    this.value = grown(this.value, new Float64Array(room));
    this.worth = grown(this.worth, new Float64Array(room));
    this.most = grown(this.most, new Float64Array(room));
    this.made = grown(this.made, new Uint8Array(room));
    this.one = grown(this.one, new Int32Array(room));
    this.other = grown(this.other, new Int32Array(room));
    this.beaten = grown(this.beaten, new Uint8Array(room));
    this.tallies = grown(this.tallies, new Int32Array(room * this.#words));
    this.#next = grown(this.#next, new Int32Array(room));
  }

  /** Where the parts with this tally hang, or would. */
  #slot(tallies: Int32Array, start: number): number {
    const last = this.#heads.length - 1;
    let slot = hashOf(tallies, start, this.#words) & last;
    for (;;) {
      const head = this.#heads[slot] ?? -1;
      if (head < 0 || this.#isTally(head, tallies, start)) return slot;
      slot = (slot + 1) & last;
    }
  }

  #isTally(part: number, tallies: Int32Array, start: number): boolean {
    for (let word = 0; word < this.#words; word++)
      if (this.tallies[part * this.#words + word] !== tallies[start + word]) return false;
    return true;
  }

  #spreadOut(): void {
    const before = this.#heads;
    this.#heads = new Int32Array(2 * before.length).fill(-1);
    for (const head of before)
      if (head >= 0) this.#heads[this.#slot(this.tallies, head * this.#words)] = head;
  }
}

function grown<Column extends Int32Array | Float64Array | Uint8Array>(
  column: Column,
  longer: Column,
): Column {
  longer.set(column);
  return longer;
}

function hashOf(tallies: Int32Array, start: number, words: number): number {
  let hash = 0;
  for (let word = 0; word < words; word++) {
    hash = Math.imul(hash ^ (tallies[start + word] ?? 0), 0x9e3779b1);
    hash ^= hash >>> 15;
  }
  hash = Math.imul(hash, 0x85ebca6b);
  return (hash ^ (hash >>> 13)) >>> 0;
}
