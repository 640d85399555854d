import type { Search } from "./search.ts";
import type { Twig } from "./twig.ts";

/** The first is kept after so many moves, each after it at twice as many. */
const firstKept = 32;
const growth = 2;
const mostKept = 5;

/** What a search had found at some of its moves, however many are made in one step. */
export class Earlier {
  private readonly search: Search;
  private readonly kept: (readonly Twig[])[] = [];
  private next = firstKept;

  constructor(search: Search) {
    this.search = search;
  }

  step(moves: number): void {
    const until = this.search.moves + moves;
    while (this.search.moves < until && !this.search.done) {
      this.search.step(Math.min(until, this.next) - this.search.moves);
      if (this.search.moves < this.next) continue;
      this.kept.push(this.search.best);
      this.next *= growth;
    }
  }

  /** The latest first; what is the best still is not among them. */
  get latest(): readonly (readonly Twig[])[] {
    const others = this.kept.filter((twigs, at) => twigs !== this.search.best && twigs !== this.kept[at - 1]);
    return others.slice(-mostKept).reverse();
  }
}
