import { extraFor } from "../../src/engine/back/index.ts";
import { checkDraft, type DraftPiece, type Job, type Method } from "../../src/engine/cloth/index.ts";
import { add, type Length, length } from "../../src/engine/length/index.ts";

/** What a back to be composed is told by; sizes in inches. */
export type Wanted = {
  readonly top?: readonly [number, number];
  readonly back?: readonly [number, number];
  readonly method?: Method;
  readonly lengths?: readonly (readonly [number, number])[];
  readonly blocks?: readonly (readonly [side: number, count: number])[];
};

/** A job with a usual heap of strips, squares and rectangles, and the lengths and blocks asked for. */
export function jobOf({ top, back, method = "frame", lengths = [], blocks = [[12.5, 4]] }: Wanted): Job {
  const extra = extraFor(method, "in");
  const outline = top === undefined ? undefined : { width: inch(top[0]), height: inch(top[1]) };
  const [width, height] = back ?? [0, 0];
  const checked = checkDraft({
    unit: "in",
    ...(outline === undefined ? {} : { top: { ...outline, method, extra } }),
    back:
      outline === undefined
        ? { width: inch(width), height: inch(height) }
        : { width: add(outline.width, extra, extra), height: add(outline.height, extra, extra) },
    plain: { name: "plain" },
    pieces: heap(lengths, blocks).map((piece, index) => ({ ...piece, row: index + 1 })),
  });
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  return checked.value.job;
}

type Unnumbered = Omit<DraftPiece, "row">;

function heap(lengths: NonNullable<Wanted["lengths"]>, blocks: NonNullable<Wanted["blocks"]>): Unnumbered[] {
  return [
    { kind: "strip", width: inch(2.5), height: inch(30), count: 8, fabric: "ink", colour: "#33445a" },
    { kind: "square", width: inch(5), height: inch(5), count: 12, fabric: "moss", colour: "#6f7f4f" },
    { kind: "rectangle", width: inch(9), height: inch(14), count: 5, fabric: "clay", colour: "#b5694a" },
    ...blocks.map(
      ([side, count]): Unnumbered => ({
        kind: "block",
        width: inch(side),
        height: inch(side),
        count,
        fabric: "blocks",
      }),
    ),
    ...lengths.map(
      ([width, height]): Unnumbered => ({
        kind: "length",
        width: inch(width),
        height: inch(height),
        fabric: "oat",
      }),
    ),
  ];
}

function inch(count: number): Length {
  return length(count * 8128);
}
