import { type Fabric, fabricValue, hexOf, isUndyed, readColour } from "../../../engine/cloth/index.ts";
import type { Project, RoughStock } from "../../../files/index.ts";
import type { FabricShare } from "./heap.ts";

/** The colour in a form that the browser's own field takes. */
export function swatchOf(fabric: Fabric): string {
  return readColour(fabric.colour)?.hex ?? "#000000";
}

/** A fabric as a photograph without colour would show it. */
export function greyOf(fabric: Fabric): string {
  return hexOf({ l: fabricValue(fabric), a: 0, b: 0 });
}

export type ValueStrip = {
  readonly id: string;
  /** Where it begins and how much of the whole it is, 0 to 1. */
  readonly from: number;
  readonly share: number;
  readonly colour: string;
  readonly grey: string;
};

/** Fabrics of a known colour beside one another, each as wide as there is of it. */
export function valueStrips(values: readonly FabricShare[]): readonly ValueStrip[] {
  const known = values.filter(({ fabric }) => !isUndyed(fabric));
  const all = known.reduce((sum, { area }) => sum + area, 0);
  let from = 0;
  return known.map(({ fabric, area }) => {
    const share = area / Math.max(1, all);
    const strip = { id: fabric.id, from, share, colour: swatchOf(fabric), grey: greyOf(fabric) };
    from += share;
    return strip;
  });
}

/** Everything that is of this fabric, with its new colour. */
export function fabricChanges(
  { rows, rough }: Pick<FabricShare, "rows" | "rough">,
  project: Pick<Project, "rough">,
  colour: string,
): { readonly rows: readonly string[]; readonly rough: readonly RoughStock[] } {
  const stock = project.rough.filter(({ id }) => rough.includes(id));
  return { rows, rough: stock.map((one) => ({ ...one, colour })) };
}
