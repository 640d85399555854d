import type { Site } from "./site.ts";
import type { Sketch } from "./sketch.ts";

/** Does the sketch tile the site, with no cell smaller than may be sewn: 1 in of plain cloth at the edge, else the smallest cell? */
export function isSound(sketch: Sketch, site: Site): boolean {
  if (sketch.width !== site.width || sketch.height !== site.height) return false;
  return isSoundPart(sketch, { site, x: 0, y: 0 });
}

type Place = { readonly site: Site; readonly x: number; readonly y: number };

function isSoundPart(sketch: Sketch, { site, x, y }: Place): boolean {
  if (!Number.isInteger(sketch.width) || !Number.isInteger(sketch.height)) return false;
  if (sketch.kind !== "join") {
    return Math.min(sketch.width, sketch.height) >= leastSide(sketch, { site, x, y });
  }
  let along = 0;
  const sound = sketch.parts.every((part) => {
    const fits = sketch.beside ? part.height === sketch.height : part.width === sketch.width;
    const at = sketch.beside ? { site, x: x + along, y } : { site, x, y: y + along };
    along += sketch.beside ? part.width : part.height;
    return fits && isSoundPart(part, at);
  });
  return sound && along === (sketch.beside ? sketch.width : sketch.height);
}

function leastSide(sketch: Sketch, { site, x, y }: Place): number {
  const { width, height } = sketch;
  const outer = x === 0 || y === 0 || x + width === site.width || y + height === site.height;
  // A plain part may be seamed, and its inner cells don't touch the edge.
  const ring = sketch.kind === "cloth" && sketch.role !== "plain" && outer;
  return ring ? Math.ceil(site.inch) : site.smallest;
}
