import { fabricValue, isUndyed, type Job } from "../cloth/index.ts";
import { outlineIn, overlaps } from "./outline.ts";
import { type Cell, type Part, type Scene, seenValue, whereOf } from "./scene.ts";
import type { Advice, AdvisedPlan } from "./types.ts";

/** L* below which cloth shows through, and above which it lets it be seen. Common practice. */
const dark = 45;
const light = 75;

/**
 * A dark allowance under light cloth shows as a shadow, which judges mark as a fault: it is pressed to the dark. What
 * is cut off with its seam is let be.
 */
export function seamShadows(scene: Scene): readonly Advice[] {
  const outline = outlineIn(scene.job);
  const isSeen = (cell: Cell | undefined) => cell !== undefined && overlaps(cell.place, outline);
  const values = valuesById(scene.job);
  const shadows = scene.meetings.filter(({ one, other }) => {
    const [a, b] = [scene.cells[one], scene.cells[other]];
    if (a === undefined || b === undefined || !isSeen(a) || !isSeen(b)) return false;
    if (one === other) return shadowsInside(a, values);
    return (isDark(a) && isLight(b)) || (isLight(a) && isDark(b));
  });
  if (shadows.length === 0) return [];
  // What is pressed under and trimmed is the dark one's allowance, so that is the one to name.
  const darkOnes = shadows.flatMap(({ one, other }) => {
    const cell = scene.cells[one];
    return one === other || (cell !== undefined && isDark(cell)) ? [one] : [other];
  });
  const steps = shadows.map(({ step }) => step);
  const isDarkPart = ({ fabric }: Part) => (values.get(fabric) ?? dark) < dark;
  return [{ kind: "dark-beside-light", where: whereOf(scene, darkOnes, steps, isDarkPart) }];
}

/** A photo taken indoors shows pale cloth darker than it is. */
const paleInPhoto = 65;

/**
 * Dark cloth under the top, where the rest of the back is not dark as well: an even shade is seen by nobody. Nor is it
 * seen through a top in whose photo nothing is pale. Where the top is pale isn't known here: it is for her to look.
 */
export function shadowsUnderTop(scene: Scene): readonly Advice[] {
  const outline = outlineIn(scene.job);
  const under = [...scene.cells.entries()].filter(([, { place }]) => overlaps(place, outline));
  const darkOnes = under.filter(([, cell]) => isDark(cell));
  const others = under.filter(([, cell]) => (seenValue(cell) ?? 0) >= dark);
  const pale = paleShareOf(scene.plan);
  if (darkOnes.length === 0 || others.length === 0 || pale === 0) return [];
  const cells = darkOnes.map(([at]) => at);
  return [{ kind: "dark-under-top", pale, where: whereOf(scene, cells, []) }];
}

function paleShareOf({ topColours = [] }: AdvisedPlan): number | null {
  if (topColours.length === 0) return null;
  const pale = topColours.filter(({ lab }) => lab.l >= paleInPhoto);
  return Math.min(
    1,
    pale.reduce((sum, { share }) => sum + share, 0),
  );
}

/** A unit of several fabrics has seams of its own. */
function shadowsInside({ parts }: Cell, values: ReadonlyMap<string, number>): boolean {
  const seen = parts.flatMap(({ fabric }) => values.get(fabric) ?? []);
  return seen.some((value) => value < dark) && seen.some((value) => value > light);
}

function valuesById({ fabrics }: Job): ReadonlyMap<string, number> {
  const known = fabrics.filter((fabric) => !isUndyed(fabric));
  return new Map(known.map((fabric) => [fabric.id, fabricValue(fabric)]));
}

function isDark(cell: Cell): boolean {
  const value = seenValue(cell);
  return value !== null && value < dark;
}

function isLight(cell: Cell): boolean {
  return (seenValue(cell) ?? 0) > light;
}
