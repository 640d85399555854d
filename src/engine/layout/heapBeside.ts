import type { Region } from "../back/index.ts";
import type { Job, Piece } from "../cloth/index.ts";

/** Her heap without the blocks that the composition has put in their places. */
export function heapBeside(region: Region, job: Job): Job {
  const placed = blocksIn(region, new Map());
  const pieces = job.pieces.flatMap((piece): readonly Piece[] => {
    const left = piece.count - (placed.get(piece.id) ?? 0);
    return left > 0 ? [{ ...piece, count: left }] : [];
  });
  return { ...job, pieces };
}

function blocksIn(region: Region, counts: Map<string, number>): Map<string, number> {
  if (region.kind === "join") for (const part of region.parts) blocksIn(part, counts);
  for (const piece of blocksOf(region)) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  return counts;
}

function blocksOf(region: Region): readonly string[] {
  if (region.kind === "on-point") return region.blocks;
  return region.kind === "block" ? [region.piece] : [];
}
