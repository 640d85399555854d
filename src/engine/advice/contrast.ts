import { type Edges, edgesOf, goodShare, isGood } from "./edges.ts";
import { mendFor } from "./mend.ts";
import { type Scene, whereOf } from "./scene.ts";
import { mostOfHeap, reachedBySwaps } from "./swaps.ts";
import type { Advice } from "./types.ts";

/** Share of the edges that should be told apart, as she likes contrast. Both figures ours. */
const wanted = { strong: 0.97, mixed: 0.8, blend: 0 } as const;

/**
 * What contrast this plan has, what its pieces could give and what one fabric more would do. Nothing where enough
 * edges are told apart, or where no colours are known.
 */
export function contrastAdvice(scene: Scene): readonly Advice[] {
  const known = edgesOf(scene);
  const goal = wanted[scene.job.contrast];
  const now = goodShare(known);
  if (known.total === 0 || now >= goal) return [];
  const swapped = reachedBySwaps(scene, known);
  const mended = mendFor(scene, known, goal);
  const where = mended === null ? weakEdges(scene, known) : placesOf(scene, mended.cells);
  const most = Math.max(swapped, mostOfHeap(scene, known));
  return [{ kind: "contrast", now, swapped, most, mend: mended?.mend ?? null, where }];
}

function weakEdges(scene: Scene, known: Edges) {
  const weak = known.edges.filter((edge) => !isGood(known, known.fabrics, edge));
  return whereOf(
    scene,
    weak.flatMap(({ one, other }) => [one, other]),
    [],
  );
}

function placesOf(scene: Scene, cells: readonly number[]) {
  return whereOf(
    scene,
    cells,
    cells.map((at) => scene.cells[at]?.steps.at(-1) ?? null),
  );
}
