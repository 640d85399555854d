import type { Size } from "../length/index.ts";
import type { Stock } from "./stock.ts";
import { type Fork, type Leaf, type Sawmill, type Twig, twigsFor } from "./twig.ts";

/** Which sides of a part lie at the edge of the back. */
export type Edges = {
  readonly left: boolean;
  readonly right: boolean;
  readonly top: boolean;
  readonly bottom: boolean;
};

/** The sides of a region, its corner at `x`, `y`, that are sides of the whole layout too. */
export function edgesOf(spot: { x: number; y: number; region: Size }, layout: Size): Edges {
  return {
    left: spot.x === 0,
    right: spot.x + spot.region.width === layout.width,
    top: spot.y === 0,
    bottom: spot.y + spot.region.height === layout.height,
  };
}

/**
 * Nothing with bias or unknown grain outside lies at the edge of the back, where it would stretch: parts change places
 * with their neighbours, and what still lies there makes way for plain cloth.
 */
export function keptInside(twigs: readonly Twig[], edges: readonly Edges[], stock: Stock): readonly Twig[] {
  const mill = twigsFor(stock);
  return twigs.map((twig, at) => inside(twig, edges[at] ?? nowhere, mill));
}

const nowhere: Edges = { left: false, right: false, top: false, bottom: false };

function inside(twig: Twig, edges: Edges, mill: Sawmill): Twig {
  if (looseAt(twig, edges) === 0) return twig;
  if (twig.kind === "leaf") return mill.cloth(twig.width, twig.height);
  const parts = inBestOrder(twig, edges);
  return mill.join(
    twig.beside,
    parts.map((part, at) => inside(part, edgesOfPart(twig, at, edges), mill)),
  );
}

/** Area that lies loose at the edge. */
function looseAt(twig: Twig, edges: Edges): number {
  if (!edges.left && !edges.right && !edges.top && !edges.bottom) return 0;
  if (twig.kind === "leaf") return isLoose(twig) ? twig.width * twig.height : 0;
  return twig.parts.reduce((sum, part, at) => sum + looseAt(part, edgesOfPart(twig, at, edges)), 0);
}

function isLoose({ face }: Leaf): boolean {
  return face !== null && face.lot.piece.grain !== "straight";
}

function edgesOfPart({ beside, parts }: Pick<Fork, "beside" | "parts">, at: number, edges: Edges): Edges {
  const [first, last] = [at === 0, at === parts.length - 1];
  return beside
    ? { ...edges, left: edges.left && first, right: edges.right && last }
    : { ...edges, top: edges.top && first, bottom: edges.bottom && last };
}

/** Each end in turn takes the part that loses least there. */
function inBestOrder(fork: Fork, edges: Edges): readonly Twig[] {
  const first = atEnd(fork.parts, fork, { at: 0, edges });
  return atEnd(first, fork, { at: fork.parts.length - 1, edges });
}

type End = { readonly at: number; readonly edges: Edges };

function atEnd(parts: readonly Twig[], { beside }: Fork, { at, edges }: End): readonly Twig[] {
  const lossOf = (order: readonly Twig[]) =>
    order.reduce(
      (sum, part, place) => sum + looseAt(part, edgesOfPart({ beside, parts: order }, place, edges)),
      0,
    );
  let best = parts;
  let least = lossOf(parts);
  for (let other = 0; other < parts.length && least > 0; other++) {
    const order = exchanged(parts, at, other);
    const loss = lossOf(order);
    if (loss >= least) continue;
    best = order;
    least = loss;
  }
  return best;
}

function exchanged(parts: readonly Twig[], one: number, other: number): readonly Twig[] {
  const [a, b] = [parts[one], parts[other]];
  return a === undefined || b === undefined ? parts : parts.with(one, b).with(other, a);
}
