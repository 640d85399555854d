import { type Part, type Scene, whereOf } from "./scene.ts";
import type { Advice } from "./types.ts";

/** Names for what most leftovers are; a batik is woven closer and weighs the same. */
const quiltingCotton = ["", "cotton", "quilting cotton", "patchwork cotton", "batik"];

/** Where cloth of another kind is sewn to what most of the back is made of. */
export function weightsAdvice(scene: Scene): readonly Advice[] {
  const usual = usualCloth(scene);
  const isOther = (part: Part) => clothOf(part) !== usual;
  const meetings = scene.meetings.filter(({ one, other }) => {
    const parts = [...(scene.cells[one]?.parts ?? []), ...(scene.cells[other]?.parts ?? [])];
    return new Set(parts.map(clothOf)).size > 1;
  });
  if (meetings.length === 0) return [];
  const all = meetings.flatMap(({ one, other }) => [one, other]);
  const cells = all.filter((at) => scene.cells[at]?.parts.some(isOther) === true);
  const steps = meetings.map(({ step }) => step);
  const where = whereOf(scene, cells, steps, isOther);
  return [{ kind: "weights", cloths: writtenNames(scene, where.pieces), where }];
}

function clothOf({ piece }: Part): string {
  const name = (piece?.cloth ?? "").trim().replace(/\s+/gu, " ").toLowerCase();
  return quiltingCotton.includes(name) ? "" : name;
}

/** What the largest part of the back is made of. */
function usualCloth({ cells }: Scene): string {
  const areas = new Map<string, number>();
  for (const { place, parts } of cells) {
    const cloth = parts[0] === undefined ? "" : clothOf(parts[0]);
    areas.set(cloth, (areas.get(cloth) ?? 0) + place.width * place.height);
  }
  const [first] = [...areas].toSorted(([a, one], [b, other]) => other - one || (a < b ? -1 : 1));
  return first?.[0] ?? "";
}

/** As she wrote them; one of quilting cotton that she didn't name has no name here either. */
function writtenNames({ job }: Scene, ids: readonly string[]): readonly string[] {
  const written = new Map<string, string>();
  for (const piece of job.pieces) {
    const key = clothOf({ piece, fabric: piece.fabric });
    if (ids.includes(piece.id) && key !== "" && !written.has(key)) written.set(key, piece.cloth.trim());
  }
  return [...written.values()];
}
