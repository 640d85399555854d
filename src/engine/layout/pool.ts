import type { Face, Lot, Stock } from "./stock.ts";

/** What is left of the heap while a layout is being made. Every change can be taken back. */
export type Pool = {
  /** May a cell of this size be cut from this face's lot now? */
  offers(face: Face, width: number, height: number): boolean;
  /** How many cells with `along` steps of length a lot can still give. */
  supply(face: Face, along: number): number;
  /** Lots of which enough is left for a cell, in an order that comes of what was taken and put back. */
  readonly open: readonly Lot[];
  isOpen(lot: Lot): boolean;
  /** The longest cell the lot can still give along its free side, in steps. */
  reach(lot: Lot): number;
  take(face: Face, width: number, height: number): void;
  putBack(face: Face, width: number, height: number): void;
  /** Cost of everything that is still left out, in steps². */
  readonly cost: number;
  /** A mark to go back to with `undo`. */
  mark(): number;
  undo(mark: number): void;
  forget(): void;
};

export function poolOf(stock: Stock): Pool {
  return new Remaining(stock);
}

/** What an end of a strip costs, as a share of plain cloth of its area. */
const endPrice = 0.5;

class Remaining implements Pool {
  /** Pieces left; for a lot that is cut along its length, exact length left. */
  private readonly left: Float64Array;
  private readonly whole: Float64Array;
  private readonly journal: number[] = [];
  private readonly stock: Stock;
  readonly open: Lot[] = [];
  /** Where each lot stands among the open ones, −1: it doesn't. */
  private readonly places: Int32Array;
  cost = 0;

  constructor(stock: Stock) {
    this.stock = stock;
    this.left = new Float64Array(stock.lots.length);
    this.whole = new Float64Array(stock.lots.length);
    this.places = new Int32Array(stock.lots.length).fill(-1);
    for (const lot of stock.lots) {
      const long = Math.max(lot.piece.width, lot.piece.height);
      this.left[lot.index] = lot.roll ? long - lot.taken : lot.count;
      this.whole[lot.index] = lot.roll ? long : lot.count;
      this.cost += this.costOf(lot);
      this.openOrClose(lot);
    }
  }

  offers(face: Face, width: number, height: number): boolean {
    const { lot } = face;
    if (!lot.roll) return (this.left[lot.index] as number) > 0;
    const along = face.along === "width" ? width : height;
    return along * this.stock.step + this.stock.allowances <= (this.left[lot.index] as number);
  }

  supply(face: Face, along: number): number {
    const left = this.left[face.lot.index] as number;
    return face.lot.roll ? Math.floor(left / (along * this.stock.step + this.stock.allowances)) : left;
  }

  isOpen(lot: Lot): boolean {
    return (this.places[lot.index] as number) >= 0;
  }

  reach(lot: Lot): number {
    return Math.floor(((this.left[lot.index] as number) - this.stock.allowances) / this.stock.step);
  }

  take(face: Face, width: number, height: number): void {
    this.change(face, width, height, -1);
  }

  putBack(face: Face, width: number, height: number): void {
    this.change(face, width, height, 1);
  }

  mark(): number {
    return this.journal.length;
  }

  undo(mark: number): void {
    while (this.journal.length > mark) {
      const amount = this.journal.pop() as number;
      const index = this.journal.pop() as number;
      this.add(index, -amount);
    }
  }

  forget(): void {
    this.journal.length = 0;
  }

  private change(face: Face, width: number, height: number, sign: number): void {
    const { lot } = face;
    const along = face.along === "width" ? width : height;
    const amount = lot.roll ? along * this.stock.step + this.stock.allowances : 1;
    this.journal.push(lot.index, sign * amount);
    this.add(lot.index, sign * amount);
  }

  private add(index: number, amount: number): void {
    const lot = this.stock.lots[index] as Lot;
    this.cost -= this.costOf(lot);
    this.left[index] = (this.left[index] as number) + amount;
    this.cost += this.costOf(lot);
    this.openOrClose(lot);
  }

  private openOrClose(lot: Lot): void {
    const { open, places } = this;
    const place = places[lot.index] as number;
    const isOpen = this.gives(lot);
    if (isOpen === place >= 0) return;
    if (isOpen) {
      places[lot.index] = open.push(lot) - 1;
      return;
    }
    const last = open.pop() as Lot;
    places[lot.index] = -1;
    if (last === lot) return;
    open[place] = last;
    places[last.index] = place;
  }

  private gives(lot: Lot): boolean {
    return lot.roll ? this.reach(lot) >= this.stock.smallest : (this.left[lot.index] as number) > 0;
  }

  // What is left of a strip that has been cut into is as good as lost: it counts by its area.
  private costOf(lot: Lot): number {
    const left = this.left[lot.index] as number;
    if (!lot.roll) return left * lot.leftOut;
    const whole = this.whole[lot.index] as number;
    return left === whole ? lot.leftOut : (endPrice * lot.area * left) / whole;
  }
}
