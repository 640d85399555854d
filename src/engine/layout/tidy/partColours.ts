import type { LayoutNode, LeafNode } from "../types.ts";
import { mapLeaves } from "../walk.ts";
import type { Bough } from "./bough.ts";
import type { Eye } from "./fault.ts";
import { type Exchange, Places } from "./places.ts";
import type { Limits } from "./resize.ts";
import type { WholeScene } from "./scene.ts";
import { type Edge, edgesOf, type Swatches, swatchesOf } from "./swatches.ts";
import { Thirds } from "./thirds.ts";

export type Parting = {
  readonly eye: Eye;
  readonly limits: Limits;
  /** Is no more wrong with it than before? */
  readonly isSound: (root: Bough) => boolean;
};

/** So many times round the cells, if as long as that something is gained. */
const mostRounds = 12;
/** So many exchanges are weighed. */
const mostWeighed = 120_000;
/** With more cells than this only those of one size change places. */
const mostForAll = 300;
/** Of what isn't plainly as good as before so many are looked at, for that takes time. */
const mostLooks = 120;
/** Of those for one cell. */
const mostLooksHere = 10;
const touch = 1e-6;

/**
 * The last of the last look: pieces change places until like fabrics no longer touch, fabrics meet as she likes them
 * to, each is spread over the pieced part, and that is as light at one end as at the other. Cells stay where they are
 * and as large.
 */
export function coloursParted(scene: WholeScene, parting: Parting): Bough {
  const table = new Swapping(scene, parting);
  table.run();
  return table.root;
}

type Weighed = { readonly exchange: Exchange; readonly gain: number };

class Swapping {
  private readonly scene: WholeScene;
  private readonly parting: Parting;
  private readonly swatches: Swatches;
  private readonly edges: readonly (readonly Edge[])[];
  private readonly places: Places;
  private readonly nodes: LeafNode[];
  private readonly fabrics: number[];
  private readonly thirds: Thirds;
  private weighed = 0;
  private looks = 0;

  constructor(scene: WholeScene, parting: Parting) {
    const { cells } = scene;
    this.scene = scene;
    this.parting = parting;
    this.swatches = swatchesOf(parting.eye);
    this.edges = edgesOf(scene);
    this.places = new Places(cells, parting.eye, parting.limits);
    this.nodes = cells.map(({ node }) => node);
    this.fabrics = this.nodes.map((node) => this.swatches.numberOf(node));
    this.thirds = new Thirds(cells, this.fabrics, this.swatches);
  }

  get root(): Bough {
    return withNodes(this.scene.root, this.nodes);
  }

  run(): void {
    for (let round = 0; round < mostRounds; round++) {
      let gained = false;
      for (const at of this.nodes.keys()) gained = this.improve(at) || gained;
      if (!gained || this.weighed >= mostWeighed) break;
    }
  }

  /** The exchange that helps most and after which no more is wrong than before. */
  private improve(at: number): boolean {
    if (!this.places.mayMove(at) || (this.costAt(at) <= touch && this.thirds.cost <= touch)) return false;
    const helping = this.othersFor(at)
      .flatMap((other) => this.weigh(at, other))
      .sort((one, other) => other.gain - one.gain);
    let looks = 0;
    for (const { exchange } of helping) {
      if (!exchange.isPlain && (looks++ >= mostLooksHere || this.looks++ >= mostLooks)) continue;
      if (exchange.isPlain || this.parting.isSound(this.rootAfter(exchange))) {
        this.make(exchange);
        return true;
      }
    }
    return false;
  }

  private othersFor(at: number): readonly number[] {
    if (this.weighed >= mostWeighed) return [];
    return this.nodes.length > mostForAll ? this.places.twinsOf(at) : [...this.nodes.keys()];
  }

  private weigh(at: number, other: number): Weighed[] {
    if (at === other || this.fabrics[at] === this.fabrics[other]) return [];
    this.weighed++;
    const gain = this.gainOf(at, other);
    if (gain <= touch || !this.keepsApart(at, other)) return [];
    const exchange = this.places.exchange(at, other, this.nodes);
    return exchange === null ? [] : [{ exchange, gain }];
  }

  private gainOf(one: number, other: number): number {
    const before = this.costOf(one, other);
    this.swapFabrics(one, other);
    const after = this.costOf(one, other);
    this.swapFabrics(one, other);
    return before - after;
  }

  /** Is at least as much of the edges told apart afterwards? */
  private keepsApart(one: number, other: number): boolean {
    if (this.parting.eye.job.contrast !== "strong") return true;
    const before = this.weakAt(one) + this.weakAt(other);
    this.swapFabrics(one, other);
    const after = this.weakAt(one) + this.weakAt(other);
    this.swapFabrics(one, other);
    return after <= before + touch;
  }

  private weakAt(at: number): number {
    let weak = 0;
    for (const { one, other, long } of this.edges[at] ?? [])
      if (this.swatches.isWeak(this.fabrics[one] ?? -1, this.fabrics[other] ?? -1)) weak += long;
    return weak;
  }

  // An edge between the two is counted twice, before and after alike, and costs the same in both.
  private costOf(one: number, other: number): number {
    const near = this.costAt(one) + this.costAt(other);
    return this.thirds.areApart(one, other) ? near + this.thirds.cost : near;
  }

  private costAt(at: number): number {
    let cost = 0;
    for (const { one, other, long } of this.edges[at] ?? [])
      cost += long * this.swatches.price(this.fabrics[one] ?? -1, this.fabrics[other] ?? -1);
    return cost;
  }

  private swapFabrics(one: number, other: number): void {
    const [a = -1, b = -1] = [this.fabrics[one], this.fabrics[other]];
    if (this.thirds.areApart(one, other)) this.thirds.swap([one, other], [a, b]);
    this.fabrics[one] = b;
    this.fabrics[other] = a;
  }

  private make({ at: [one, other], nodes: [first, second] }: Exchange): void {
    this.swapFabrics(one, other);
    this.nodes[one] = first;
    this.nodes[other] = second;
  }

  private rootAfter({ at: [one, other], nodes: [first, second] }: Exchange): Bough {
    return withNodes(this.scene.root, this.nodes.with(one, first).with(other, second));
  }
}

/** The same tree with other leaves, in the order of its cells; what is unchanged is the very same. */
function withNodes(root: Bough, nodes: readonly LeafNode[]): Bough {
  let at = 0;
  const next = (node: LeafNode): LeafNode => nodes[at++] ?? node;
  const through = (bough: Bough): Bough => {
    if (bough.kind === "leaf") {
      const node = changed(bough.node, next);
      return node === bough.node ? bough : { ...bough, node };
    }
    const parts = bough.parts.map(through);
    return parts.every((part, index) => part === bough.parts[index]) ? bough : { ...bough, parts };
  };
  return through(root);
}

function changed(node: LayoutNode, next: (leaf: LeafNode) => LeafNode): LayoutNode {
  let isSame = true;
  const made = mapLeaves(node, (leaf) => {
    const other = next(leaf);
    isSame &&= other === leaf;
    return other;
  });
  return isSame ? node : made;
}
