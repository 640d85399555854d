import { describe, expect, test } from "vitest";
import { newProject, readTableRows } from "../../../files/index.ts";
import { heapOf } from "./heap.ts";
import { remarksOf } from "./remarks.ts";

function kindsFor(...rows: readonly string[]): readonly string[] {
  const table = ["kind,width,height,count,fabric,colour", ...rows].join("\n");
  const read = readTableRows(new TextEncoder().encode(table), "in");
  const leftovers = read.rows.map((row, index) => ({ ...row, id: `${index}` }));
  const heap = heapOf({ ...newProject({ title: "", createdAt: 0 }), leftovers });
  return remarksOf(heap).map((remark) => (remark.kind === "one-value" ? remark.value : remark.fabric.name));
}

const squares = (count: number, fabric: string, colour: string) => `square,5,5,${count},${fabric},${colour}`;

describe("what is worth knowing of a heap", () => {
  test.each<[string, readonly string[], readonly string[]]>([
    ["nothing of an empty one", [], []],
    [
      "nothing of one with some of each",
      [squares(4, "milk", "#f4efe2"), squares(4, "moss", "#6f7d4f"), squares(4, "ink", "#2b3a4f")],
      [],
    ],
    [
      "much of one and little of the others",
      [squares(20, "milk", "#f4efe2"), squares(2, "moss", "#6f7d4f"), squares(2, "ink", "#2b3a4f")],
      ["milk"],
    ],
    ["two fabrics are no crowd", [squares(20, "milk", "#f4efe2"), squares(1, "ink", "#2b3a4f")], []],
    [
      "all dark",
      [squares(4, "ink", "#2b3a4f"), squares(4, "plum", "#4a2f45"), squares(3, "pine", "#274031")],
      ["dark"],
    ],
    [
      "all light but for a trace",
      [
        squares(40, "milk", "#f4efe2"),
        squares(40, "cream", "#efe6d0"),
        squares(40, "shell", "#f3dfd8"),
        squares(1, "ink", "#2b3a4f"),
      ],
      ["light"],
    ],
    [
      "with a colour that isn't known nobody can tell",
      [squares(4, "ink", "#2b3a4f"), squares(4, "plum", "#4a2f45"), squares(4, "some", "")],
      [],
    ],
  ])("%s", (_, rows, remarks) => {
    expect(kindsFor(...rows)).toEqual(remarks);
  });
});
