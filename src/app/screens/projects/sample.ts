import table from "../../../../samples/garden-room.csv?raw";
import { inches } from "../../../engine/length/index.ts";
import {
  type Leftover,
  lengthAsMeasured,
  newProject,
  type Project,
  readTableRows,
} from "../../../files/index.ts";

/** The invented leftovers of a throw of 60 × 80 in. Nothing of it is planned: that is done before her eyes. */
export function sampleProject(title: string, nameOf = (name: string) => name): Partial<Project> {
  const { rows } = readTableRows(new TextEncoder().encode(named(nameOf)), "in");
  const leftovers = rows.map((row, index): Leftover => ({ ...row, id: `sample-${index + 1}` }));
  const measure = (count: number) => [lengthAsMeasured(inches(count), "in"), null, null] as const;
  return {
    title,
    sample: true,
    leftovers,
    size: {
      ...newProject({ title, createdAt: 0 }).size,
      topWidths: measure(60),
      topHeights: measure(80),
      method: "frame",
    },
  };
}

/** The table with the names of its cloth, and her notes, in the words she reads. */
function named(nameOf: (name: string) => string): string {
  const [heads = "", ...rows] = table.trim().split("\n");
  const areNames = heads.split(",").map((head) => head === "fabric" || head === "name");
  const inHers = (row: string) =>
    row
      .split(",")
      .map((cell, at) => (areNames[at] ? nameOf(cell) : cell))
      .join(",");
  return [heads, ...rows.map(inHers)].join("\n");
}
