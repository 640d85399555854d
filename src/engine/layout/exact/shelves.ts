import type { Parts } from "./parts.ts";

/** Opened parts of one size, the worthiest first. */
export type Shelf = { readonly width: number; readonly height: number; readonly parts: number[] };

export class Shelves {
  readonly all: Shelf[] = [];
  readonly #bySize = new Map<string, Shelf>();
  readonly #parts: Parts;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  put(part: number): void {
    const { parts } = this.#shelfFor(part);
    parts.splice(this.#placeIn(parts, part), 0, part);
  }

  #shelfFor(part: number): Shelf {
    const [width, height] = [this.#parts.width[part] ?? 0, this.#parts.height[part] ?? 0];
    const key = `${width} ${height}`;
    const found = this.#bySize.get(key);
    if (found !== undefined) return found;
    const shelf = { width, height, parts: [] };
    this.#bySize.set(key, shelf);
    this.all.push(shelf);
    return shelf;
  }

  #placeIn(parts: readonly number[], part: number): number {
    const { worth } = this.#parts;
    let [low, high] = [0, parts.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((worth[parts[middle] ?? 0] ?? 0) >= (worth[part] ?? 0)) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
