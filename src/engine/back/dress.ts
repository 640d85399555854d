import type { Job } from "../cloth/index.ts";
import { inches, type Length, length } from "../length/index.ts";
import { cutFrom } from "./cutting/from-lengths.ts";
import type { CutCell, Sheet } from "./cutting/types.ts";
import {
  below,
  beside,
  type Sketch,
  type SketchBlock,
  type SketchCloth,
  type SketchOnPoint,
  type SketchPieced,
} from "./sketch.ts";

/** A sketch whose cloth has its fabric, in cells that one length or one width of bought cloth can give. */
export type Dressed =
  | {
      readonly kind: "join";
      readonly beside: boolean;
      readonly parts: readonly Dressed[];
      readonly width: number;
      readonly height: number;
    }
  | (SketchCloth & { readonly fabric: string })
  | (SketchPieced & { readonly fabric: string })
  | (SketchOnPoint & { readonly fabric: string })
  | SketchBlock;

type Choice = { readonly fabric: string; readonly cells: readonly SketchCloth[] };

/**
 * Gives every plain part its cloth: her own lengths first, the largest parts before small ones, each whole or in two
 * or three equal cells if that lets a length serve; what they can't give is bought. Small spacers take the main cloth.
 */
export function dress(sketch: Sketch, job: Job): Dressed {
  const wardrobe = new Wardrobe(job);
  const cells = clothOf(sketch).sort((one, other) => rank(other) - rank(one));
  const choices = new Map(cells.map((cell) => [cell, wardrobe.choose(cell)]));
  return dressed(sketch, choices, wardrobe.main);
}

function rank(cell: SketchCloth): number {
  return cell.width * cell.height * (cell.role === "plain" ? 1000 : 1);
}

function clothOf(sketch: Sketch): SketchCloth[] {
  if (sketch.kind === "join") return sketch.parts.flatMap(clothOf);
  return sketch.kind === "cloth" ? [sketch] : [];
}

function dressed(sketch: Sketch, choices: ReadonlyMap<SketchCloth, Choice>, main: string): Dressed {
  switch (sketch.kind) {
    case "join":
      return { ...sketch, parts: sketch.parts.map((part) => dressed(part, choices, main)) };
    case "pieced":
    case "on-point":
      return { ...sketch, fabric: main };
    case "block":
      return sketch;
    case "cloth": {
      const choice = choices.get(sketch);
      return seamed(sketch, choice ?? { fabric: main, cells: [sketch] });
    }
  }
}

function seamed(cell: SketchCloth, { fabric, cells }: Choice): Dressed {
  const parts = cells.map((part) => ({ ...part, fabric }));
  const joined = cell.width >= cell.height ? beside(parts) : below(parts);
  return joined as Dressed;
}

/**
 * Cells along the longer side, the first a little longer: two are as 9 to 7 where one width of cloth allows it, since
 * the seam of halves would lie on the back's centre line, others equal.
 */
function splitCell(cell: SketchCloth, count: number, widest: number): SketchCloth[] {
  const wide = cell.width >= cell.height;
  const [whole, short] = wide ? [cell.width, cell.height] : [cell.height, cell.width];
  const uneven = Math.round((whole * 9) / 16);
  const isUneven = count === 2 && (short <= widest || uneven <= widest);
  const each = isUneven ? whole - uneven : Math.floor(whole / count);
  return Array.from({ length: count }, (_, at) => {
    const long = at === 0 ? whole - each * (count - 1) : each;
    return { ...cell, width: wide ? long : cell.width, height: wide ? cell.height : long };
  });
}

const mostCells = 24;

class Wardrobe {
  main: string;
  private mainArea = 0;
  private readonly job: Job;
  private readonly sheets = new Map<string, Sheet[]>();
  private readonly taken = new Map<string, CutCell[]>();

  constructor(job: Job) {
    this.job = job;
    this.main = job.plain;
    for (const piece of job.pieces) {
      if (piece.kind !== "length" || piece.use === "keep-back" || piece.use === "give-away") continue;
      const sheets = this.sheets.get(piece.fabric) ?? [];
      for (let copy = 1; copy <= piece.count; copy++) {
        const directed = piece.direction === "one-way";
        sheets.push({ id: piece.id, copy, width: piece.width, height: piece.height, directed });
      }
      this.sheets.set(piece.fabric, sheets);
    }
  }

  choose(cell: SketchCloth): Choice {
    const own = this.fromLengths(cell);
    const choice = own ?? { fabric: this.job.plain, cells: this.split(cell, this.boughtCells(cell)) };
    if (cell.width * cell.height > this.mainArea) {
      this.main = choice.fabric;
      this.mainArea = cell.width * cell.height;
    }
    return choice;
  }

  private split(cell: SketchCloth, count: number): SketchCloth[] {
    const { clothWidth, plainSeam, step } = this.job;
    return splitCell(cell, count, Math.floor((clothWidth - 2 * plainSeam) / step));
  }

  private fromLengths(cell: SketchCloth): Choice | null {
    for (const fabric of this.fabricsFor(cell)) {
      for (const splits of this.waysToSplit(cell)) {
        const cells = this.split(cell, splits);
        if (this.take(fabric, cells, splits)) return { fabric, cells };
      }
    }
    return null;
  }

  // A plain part in many small cells is not plain any more: each stays at least 15 in long.
  private waysToSplit(cell: SketchCloth): number[] {
    const long = (Math.max(cell.width, cell.height) * this.job.step) / inches(15);
    return cell.role === "plain" ? [1, 2, 3].filter((splits) => splits === 1 || long / splits >= 1) : [1];
  }

  /** The main cloth first; for another tone, another cloth first. */
  private fabricsFor(cell: SketchCloth): string[] {
    const fabrics = [...this.sheets.keys()].sort((one, other) => this.areaOf(other) - this.areaOf(one));
    if (cell.tone === 0 || fabrics.length < 2) {
      return fabrics.sort((one, other) => Number(other === this.main) - Number(one === this.main));
    }
    return fabrics.sort((one, other) => Number(one === this.main) - Number(other === this.main));
  }

  private areaOf(fabric: string): number {
    return (this.sheets.get(fabric) ?? []).reduce((sum, sheet) => sum + sheet.width * sheet.height, 0);
  }

  private take(fabric: string, cells: readonly SketchCloth[], splits: number): boolean {
    const before = this.taken.get(fabric) ?? [];
    if (before.length + cells.length > mostCells) return false;
    const seam = splits > 1 ? this.job.plainSeam : this.job.seam;
    const wanted = cells.map((cell, at) => this.cutCell(cell, before.length + at, seam));
    const all = [...before, ...wanted];
    const area = all.reduce((sum, cell) => sum + cell.width * cell.height, 0);
    if (area > this.areaOf(fabric)) return false;
    if (cutFrom(this.sheets.get(fabric) ?? [], all).some((place) => place === null)) return false;
    this.taken.set(fabric, all);
    return true;
  }

  private cutCell(cell: SketchCloth, key: number, inner: Length): CutCell {
    const wide = cell.width >= cell.height;
    const side = (steps: number, splitSide: boolean) =>
      length(steps * this.job.step + this.job.seam + (splitSide ? inner : this.job.seam));
    return { key, width: side(cell.width, wide), height: side(cell.height, !wide) };
  }

  /** How many equal cells, so that one side of each is within the cloth's width. */
  private boughtCells(cell: SketchCloth): number {
    const short = Math.min(cell.width, cell.height) * this.job.step + 2 * this.job.seam;
    if (short <= this.job.clothWidth) return 1;
    const room = this.job.clothWidth - 2 * this.job.plainSeam;
    return Math.ceil((Math.max(cell.width, cell.height) * this.job.step) / room);
  }
}
