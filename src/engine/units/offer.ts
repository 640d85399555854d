import type { Job, SizedPiece } from "../cloth/index.ts";
import { toCut } from "../length/index.ts";
import type { Made, Offer, OfferCloth, Taken } from "./types.ts";

type Facts = {
  readonly pattern: string;
  readonly made: Made;
  readonly insideOnly?: boolean;
  /** Seams inside, where they can't be counted from the parts of its joins. */
  readonly joins?: number;
  readonly atMost?: number;
};

/** A unit of these rows as the solver takes it. */
export function offerOf({ pattern, made, ...facts }: Facts, rows: readonly SizedPiece[], job: Job): Offer {
  const { width, height } = made;
  const pieces = piecesIn(made);
  const cloth = clothIn(made, job);
  const own = pieces.flatMap(({ piece }) => rows.find(({ id }) => id === piece)?.fabric ?? []);
  return {
    pattern,
    width,
    height,
    ...(made.kind === "unit" && made.rotations !== undefined ? { rotations: made.rotations } : {}),
    pieces,
    cloth,
    atMost: facts.atMost ?? timesFrom(pieces, rows),
    joins: facts.joins ?? joinsIn(made),
    fabrics: [...new Set([...own, ...cloth.map(({ fabric }) => fabric)])],
    insideOnly: facts.insideOnly ?? false,
    made,
  };
}

/** How often the rows give these pieces. */
function timesFrom(pieces: readonly Taken[], rows: readonly SizedPiece[]): number {
  const times = pieces.map(({ piece, count }) => {
    const row = rows.find(({ id }) => id === piece);
    return Math.floor((row?.count ?? 0) / count);
  });
  return Math.min(...times);
}

function piecesIn(made: Made): readonly Taken[] {
  const counts = new Map<string, number>();
  for (const { piece, count } of takenIn(made)) counts.set(piece, (counts.get(piece) ?? 0) + count);
  return [...counts].map(([piece, count]) => ({ piece, count }));
}

function takenIn(made: Made): readonly Taken[] {
  switch (made.kind) {
    case "join":
      return made.parts.flatMap(takenIn);
    case "piece":
      return [{ piece: made.piece, count: 1 }];
    case "unit":
      return made.pieces;
    case "slab":
      return made.pieces ?? [];
    case "cloth":
      return [];
  }
}

/** A strip of cloth within a join is cut with a seam on all sides. */
function clothIn(made: Made, { seam }: Pick<Job, "seam">): readonly OfferCloth[] {
  switch (made.kind) {
    case "join":
      return made.parts.flatMap((part) => clothIn(part, { seam }));
    case "unit":
      return made.cloth;
    case "cloth": {
      const { fabric, source } = made;
      return [{ fabric, source, width: toCut(made.width, seam), height: toCut(made.height, seam), count: 1 }];
    }
    case "piece":
    case "slab":
      return [];
  }
}

function joinsIn(made: Made): number {
  if (made.kind !== "join") return 0;
  return made.parts.reduce((sum, part) => sum + joinsIn(part), made.parts.length - 1);
}
