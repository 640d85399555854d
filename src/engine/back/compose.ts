import type { Job } from "../cloth/index.ts";
import { finished, length } from "../length/index.ts";
import { dress } from "./dress.ts";
import { withSeamsMoved } from "./longSeams.ts";
import type { Region } from "./region.ts";
import { type Site, siteOf } from "./site.ts";
import { pieced, type Sketch } from "./sketch.ts";
import { isSound } from "./sound.ts";
import { allOver } from "./styles/allOver.ts";
import { blockLine } from "./styles/blockLine.ts";
import { centred } from "./styles/centred.ts";
import { chunks } from "./styles/chunks.ts";
import { cross } from "./styles/cross.ts";
import { insertAcross, insertDown } from "./styles/insert.ts";
import { squares } from "./styles/squares.ts";
import { strippy } from "./styles/strippy.ts";
import type { Style } from "./types.ts";

/** A style made to measure for a site. It tiles the layout exactly. */
export type Composer = (site: Site, variant: number) => Sketch;

const composers: Readonly<Record<Style, Composer>> = {
  "insert-across": insertAcross,
  "insert-down": insertDown,
  cross,
  chunks,
  strippy,
  "block-line": blockLine,
  centred,
  squares,
  "all-over": allOver,
};

/** The style's composition in her measurements and her cloth. `variant` mirrors it: 0 as is, 1 sideways, 2 head over, 3 both. */
export function compose(job: Job, style: Style, variant = 0): Region {
  const sketch = sketchFor(job, style, variant);
  return regionOf(dress(mirrored(sketch, (variant & 1) === 1, (variant & 2) === 2), job), job);
}

/** A back too small for its style, or for a ring, is pieced all over. */
function sketchFor(job: Job, style: Style, variant: number): Sketch {
  const site = siteOf(job);
  const ringless = { ...site, ringX: 0, ringY: 0 };
  const ways = [() => composers[style](site, variant), () => composers[style](ringless, variant)];
  for (const way of ways) {
    const sketch = way();
    if (isSound(sketch, site)) return style === "squares" ? sketch : withSeamsMoved(sketch, site);
  }
  return pieced(site.width, site.height);
}

/** Finished area that a style would piece, in steps²: what it can use of the heap. */
export function piecedArea(job: Job, style: Style): number {
  return areaOfPieced(sketchFor(job, style, 0));
}

function areaOfPieced(sketch: Sketch): number {
  if (sketch.kind === "join") return sketch.parts.reduce((sum, part) => sum + areaOfPieced(part), 0);
  if (sketch.kind === "cloth") return 0;
  // Half of it is plain triangles.
  return (sketch.width * sketch.height) / (sketch.kind === "on-point" ? 2 : 1);
}

function mirrored(sketch: Sketch, sideways: boolean, headOver: boolean): Sketch {
  if (sketch.kind !== "join") return sketch;
  const parts = sketch.parts.map((part) => mirrored(part, sideways, headOver));
  return { ...sketch, parts: (sketch.beside ? sideways : headOver) ? parts.reverse() : parts };
}

function regionOf(sketch: ReturnType<typeof dress>, job: Job): Region {
  const size = {
    width: finished(length(sketch.width * job.step)),
    height: finished(length(sketch.height * job.step)),
  };
  switch (sketch.kind) {
    case "join":
      return {
        kind: "join",
        direction: sketch.beside ? "beside" : "below",
        parts: sketch.parts.map((part) => regionOf(part, job)),
        ...size,
      };
    case "cloth":
      return { kind: "cloth", role: sketch.role, fabric: sketch.fabric, ...size };
    case "pieced":
      return { kind: "pieced", fabric: sketch.fabric, ...size };
    case "on-point":
      return { kind: "on-point", blocks: sketch.blocks, fabric: sketch.fabric, ...size };
    case "block":
      return { kind: "block", piece: sketch.piece, turned: sketch.turned, ...size };
  }
}
