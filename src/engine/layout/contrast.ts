import { type Contrast, colourDifference, type Fabric, isUndyed, type Job } from "../cloth/index.ts";

/**
 * How unwelcome an edge between two fabrics is, for each inch of it: 1 where a fabric meets itself, down to 0 where
 * they are told apart at a glance (CIEDE2000 of 20 or more), or, if she would have them blend, where they are near in
 * colour. Fabrics of unknown colour only mind themselves.
 */
export type Clash = (one: string, other: string) => number;

export function clashOf(job: Pick<Job, "fabrics" | "contrast">): Clash {
  const fabrics = new Map(job.fabrics.map((fabric) => [fabric.id, fabric]));
  const known = new Map<string, Map<string, number>>();
  return (one, other) => {
    if (one === other) return 1;
    const row = known.get(one) ?? new Map<string, number>();
    const before = row.get(other);
    if (before !== undefined) return before;
    const clash = clashBetween(fabrics.get(one), fabrics.get(other), job.contrast);
    known.set(one, row.set(other, clash));
    return clash;
  };
}

function clashBetween(one: Fabric | undefined, other: Fabric | undefined, contrast: Contrast): number {
  const [a, b] = [one?.colours[0], other?.colours[0]];
  if (one === undefined || other === undefined || a === undefined || b === undefined) return 0;
  if (isUndyed(one) || isUndyed(other)) return 0;
  switch (contrast) {
    case "strong":
      // By her wish the difference that counts is in value, and twice as much is wanted.
      return 1.2 * Math.max(0, 1 - Math.abs(a.lab.l - b.lab.l) / 40);
    case "mixed":
      return 0.6 * Math.max(0, 1 - colourDifference(a.lab, b.lab) / 20);
    case "blend":
      return 0.3 * Math.min(1, colourDifference(a.lab, b.lab) / 60);
  }
}
