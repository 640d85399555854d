import { mostPieces } from "./endToEnd.ts";
import type { Lie } from "./lies.ts";

/**
 * Pieces that may go into one row, the best first. Kept between rows and filled anew for each, since rows are tried
 * many thousand times a second.
 */
export class Candidates {
  count = 0;
  readonly lies: Lie[] = [];
  /** How long each makes the row, in steps. */
  readonly lengths = new Int32Array(mostPieces);
  /** What each saves in this row, in steps². */
  readonly worths = new Float64Array(mostPieces);
  private readonly prices = new Float64Array(mostPieces);

  /** Puts one where its price belongs; the cheapest stand first. */
  enter(lie: Lie, { along, worth, price }: Offer): void {
    let at = this.count++;
    while (at > 0 && (this.prices[at - 1] as number) > price) {
      this.move(at - 1, at);
      at--;
    }
    this.lies[at] = lie;
    this.lengths[at] = along;
    this.worths[at] = worth;
    this.prices[at] = price;
  }

  /** How much shorter those chosen can be trimmed, all together; `mask` has a bit for each. */
  give(mask: number): number {
    let give = 0;
    for (let at = 0; at < this.count; at++) {
      if ((mask & (1 << at)) === 0) continue;
      give += Math.max(0, (this.lengths[at] as number) - (this.lies[at] as Lie).leastAlong);
    }
    return give;
  }

  worth(mask: number): number {
    let worth = 0;
    for (let at = 0; at < this.count; at++) if (mask & (1 << at)) worth += this.worths[at] as number;
    return worth;
  }

  chosen(mask: number): Lie[] {
    const chosen: Lie[] = [];
    for (let at = 0; at < this.count; at++) if (mask & (1 << at)) chosen.push(this.lies[at] as Lie);
    return chosen;
  }

  private move(from: number, to: number): void {
    this.lies[to] = this.lies[from] as Lie;
    this.lengths[to] = this.lengths[from] as number;
    this.worths[to] = this.worths[from] as number;
    this.prices[to] = this.prices[from] as number;
  }
}

type Offer = { readonly along: number; readonly worth: number; readonly price: number };
