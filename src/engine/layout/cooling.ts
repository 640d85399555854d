import { exponential } from "./exponential.ts";

/** ln 0.03: at the end of a round a move may be worse by three hundredths of what it may be at its start. */
const fall = -3.506557897319982;
/** Each round has so many times the moves of the one before. */
const growth = 1.7;

/**
 * The temperature of an annealing that may be stopped at any time: it cools down in rounds, heated up again after each,
 * every round longer than the one before. Nothing depends on how many moves there will be, so a search that is stopped
 * has always settled once, and a search with fewer moves is the beginning of one with more.
 */
export class Cooling {
  private at = 0;
  private length: number;
  private readonly hottest: number;

  /**
   * For a heap of so many pieces. The first round is long enough to look at each of them; a few large pieces have to
   * be moved about more freely than many small ones (both tried out on the tuning heaps).
   */
  constructor(pieces: number) {
    this.length = 300 + pieces;
    this.hottest = 4 + 120 / Math.max(1, pieces);
  }

  /** In square inches of cost. */
  get temperature(): number {
    return this.hottest * exponential((this.at / this.length) * fall);
  }

  /** One move further. */
  next(): void {
    this.at += 1;
    if (this.at < this.length) return;
    this.at = 0;
    this.length = Math.ceil(this.length * growth);
  }
}
