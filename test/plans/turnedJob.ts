import type { Job, Piece } from "../../src/engine/cloth/index.ts";
import type { Size } from "../../src/engine/length/index.ts";

/**
 * The same job lying on its side: back, top and every leftover with width and height changed.
 * What runs up and down in her table still does, so for one-way cloth it is another job, and as good a one.
 */
export function turnedJob(job: Job): Job {
  return {
    ...job,
    top: job.top && { ...job.top, ...lying(job.top) },
    back: lying(job.back),
    pieces: job.pieces.map(turnedPiece),
  };
}

function turnedPiece(piece: Piece): Piece {
  return piece.kind === "crumbs" ? piece : { ...piece, width: piece.height, height: piece.width };
}

function lying({ width, height }: Size): Size {
  return { width: height, height: width };
}
