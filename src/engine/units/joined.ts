import type { Job, SizedPiece } from "../cloth/index.ts";
import { type Finished, type Size, sum } from "../length/index.ts";
import type { Made, MadeCloth, MadeJoin, MadePiece } from "./types.ts";

type Direction = MadeJoin["direction"];

/** Parts of one side sewn to one another; at least one of them is a leftover, so the seam is the piecing seam. */
export function joined(direction: Direction, parts: readonly Made[], { seam }: Pick<Job, "seam">): MadeJoin {
  const [first] = parts;
  const across = { width: first?.width ?? sum<Finished>([]), height: first?.height ?? sum<Finished>([]) };
  const size =
    direction === "beside"
      ? { ...across, width: sum(parts.map(({ width }) => width)) }
      : { ...across, height: sum(parts.map(({ height }) => height)) };
  return { kind: "join", direction, seam, parts, ...size };
}

/** The same as a set of like pieces. */
export function asSet(pattern: string, join: MadeJoin): MadeJoin {
  return { ...join, pattern };
}

export function laid({ id }: SizedPiece, { width, height }: Size<Finished>, turned = false): MadePiece {
  return { kind: "piece", piece: id, turned: turned && width !== height, width, height };
}

export function copingOf(fabric: string, { width, height }: Size<Finished>): MadeCloth {
  return { kind: "cloth", role: "coping", fabric, source: "buy", width, height };
}
