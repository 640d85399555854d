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
export function sampleProject(title: string): Partial<Project> {
  const { rows } = readTableRows(new TextEncoder().encode(table), "in");
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
