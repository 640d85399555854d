import type { Style } from "../src/engine/back/index.ts";
import type { Method, Time } from "../src/engine/cloth/index.ts";
import type { DisplayUnit } from "../src/engine/length/index.ts";

/** One back of the gallery. Its leftovers are `heaps/<name>.csv`; all of them are invented. */
export type GalleryQuilt = {
  readonly name: string;
  readonly title: string;
  readonly unit: DisplayUnit;
  /** As she says it: the finished top and how it will be quilted, or the back alone. */
  readonly size: { readonly top: string; readonly method: Method } | { readonly back: string };
  readonly style: Style;
  readonly time: Time;
  /** Solver moves; few, so that the whole gallery is made again in half a minute. */
  readonly effort: number;
};

const inInches = { unit: "in", time: "weekend", effort: 2000 } as const;
const inCentimetres = { ...inInches, unit: "cm" } as const;
const framed = (top: string) => ({ top, method: "frame" as const });
const atHome = (top: string) => ({ top, method: "machine" as const });
const byHand = (top: string) => ({ top, method: "hand" as const });

/** Each style twice; from a cushion to a bed, on a frame, at home and by hand, and heaps that are hard in their own way. */
export const galleryQuilts: readonly GalleryQuilt[] = [
  {
    ...inInches,
    name: "pram-quilt",
    title: "A baby quilt in an afternoon",
    size: atHome("36x42"),
    style: "insert-across",
    time: "afternoon",
  },
  {
    ...inInches,
    name: "queen-size",
    title: "A bed, and six yards of plain",
    size: framed("90x96"),
    style: "insert-across",
  },
  {
    ...inCentimetres,
    name: "single-bed-metric",
    title: "A single bed, in centimetres",
    size: framed("140x200"),
    style: "insert-down",
  },
  {
    ...inInches,
    name: "by-hand",
    title: "Few seams, for quilting by hand",
    size: byHand("54x66"),
    style: "insert-down",
  },
  {
    ...inInches,
    name: "two-lengths",
    title: "A frame, and two lengths that are not enough",
    size: framed("60x78"),
    style: "cross",
  },
  {
    ...inInches,
    name: "garden-path",
    title: "Charm squares",
    size: atHome("48x60"),
    style: "cross",
    time: "afternoon",
  },
  {
    ...inInches,
    name: "mostly-blue",
    title: "Much of one blue, little of the rest",
    size: framed("60x72"),
    style: "chunks",
  },
  {
    ...inCentimetres,
    name: "picnic-rug",
    title: "Large pieces, in centimetres",
    size: atHome("150x180"),
    style: "chunks",
  },
  {
    ...inInches,
    name: "roll-ends",
    title: "Nothing but strips",
    size: atHome("50x62"),
    style: "strippy",
  },
  {
    ...inInches,
    name: "lighthouse-print",
    title: "A print that has an up",
    size: framed("56x70"),
    style: "strippy",
  },
  {
    ...inInches,
    name: "orphan-blocks",
    title: "Nothing but blocks",
    size: framed("60x72"),
    style: "block-line",
  },
  {
    ...inInches,
    name: "round-robin",
    title: "Odd blocks, brought to one width",
    size: byHand("62x74"),
    style: "block-line",
  },
  {
    ...inInches,
    name: "flying-corners",
    title: "Triangles cut from the corners of a top",
    size: atHome("50x60"),
    style: "insert-across",
  },
  { ...inInches, name: "guest-bed", title: "A bed round one block", size: framed("78x88"), style: "centred" },
  {
    ...inInches,
    name: "all-the-greens",
    title: "One family of colours",
    size: atHome("54x64"),
    style: "squares",
  },
  {
    ...inInches,
    name: "spare-blocks",
    title: "Blocks and squares of one size",
    size: framed("72x84"),
    style: "squares",
  },
  {
    ...inInches,
    name: "bag-of-crumbs",
    title: "Nothing but a bag of crumbs",
    size: atHome("40x50"),
    style: "insert-across",
  },
  {
    ...inCentimetres,
    name: "reading-chair",
    title: "A cushion, by hand",
    size: { back: "45x45" },
    style: "centred",
    time: "afternoon",
  },
  {
    ...inInches,
    name: "window-seat",
    title: "A cushion of small squares",
    size: { back: "18 1/2 x 18 1/2" },
    style: "all-over",
    time: "afternoon",
  },
  {
    ...inInches,
    name: "nothing-wasted",
    title: "A full heap, all over",
    size: framed("60x60"),
    style: "all-over",
  },
];
