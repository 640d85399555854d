import type { Parts } from "./parts.ts";

/** Parts not yet opened, in a heap: the one that may lead to most comes first, of equals the one that has most. */
export class Frontier {
  #heap = new Int32Array(1024);
  #size = 0;
  readonly #parts: Parts;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  put(part: number): void {
    if (this.#size === this.#heap.length) this.#grow();
    let place = this.#size;
    this.#size += 1;
    while (place > 0) {
      const above = (place - 1) >> 1;
      const parent = this.#heap[above] ?? -1;
      if (!this.#isBefore(part, parent)) break;
      this.#heap[place] = parent;
      place = above;
    }
    this.#heap[place] = part;
  }

  /** −1: none is left. */
  take(): number {
    if (this.#size === 0) return -1;
    const first = this.#heap[0] ?? -1;
    this.#size -= 1;
    this.#sink(this.#heap[this.#size] ?? -1);
    return first;
  }

  #sink(part: number): void {
    let place = 0;
    for (let below = 1; below < this.#size; below = 2 * place + 1) {
      if (below + 1 < this.#size && this.#isBefore(this.#heap[below + 1] ?? -1, this.#heap[below] ?? -1))
        below += 1;
      const child = this.#heap[below] ?? -1;
      if (!this.#isBefore(child, part)) break;
      this.#heap[place] = child;
      place = below;
    }
    this.#heap[place] = part;
  }

  #isBefore(one: number, other: number): boolean {
    const { most, value } = this.#parts;
    const more = (most[one] ?? 0) - (most[other] ?? 0);
    return more > 0 || (more === 0 && (value[one] ?? 0) > (value[other] ?? 0));
  }

  #grow(): void {
    const longer = new Int32Array(2 * this.#heap.length);
    longer.set(this.#heap);
    this.#heap = longer;
  }
}
