import { fabricValue } from "../../../engine/cloth/index.ts";
import type { HeapRemark } from "../../../words/index.ts";
import type { FabricShare, Heap } from "./heap.ts";

// More than half of one, and no other with more than a sixth: the others can't hold their own. From memory.
const much = 0.5;
const little = 1 / 6;
// A difference under 15 in L* is hardly seen across a room. No quilting text gives a number: a proposal of ours.
const hardlySeen = 15;
/** What there is less of than this does not make a heap light or dark. */
const trace = 0.03;

/** What is worth knowing of the heap as a whole, before anything is planned with it. */
export function remarksOf({ fabrics }: Pick<Heap, "fabrics">): readonly HeapRemark[] {
  return [...muchOfOne(fabrics), ...oneValue(fabrics)];
}

function muchOfOne([most, next, third]: readonly FabricShare[]): readonly HeapRemark[] {
  if (most === undefined || next === undefined || third === undefined) return [];
  if (most.share < much || next.share > little) return [];
  return [{ kind: "much-of-one", fabric: most.fabric, share: most.share }];
}

/** Of fabrics whose colour is known; with one that isn't, nobody can tell. */
function oneValue(fabrics: readonly FabricShare[]): readonly HeapRemark[] {
  const seen = fabrics.filter(({ share }) => share >= trace);
  if (seen.length < 3 || seen.some(({ isKnown }) => !isKnown)) return [];
  const values = seen.map(({ fabric }) => fabricValue(fabric));
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  if (greatest - least >= hardlySeen) return [];
  return [{ kind: "one-value", value: valueName((least + greatest) / 2) }];
}

function valueName(value: number): "light" | "medium" | "dark" {
  if (value > 65) return "light";
  return value < 40 ? "dark" : "medium";
}
