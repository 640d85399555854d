import type { Style } from "../../src/engine/back/index.ts";
import type { Draft, DraftPiece, Kind } from "../../src/engine/cloth/index.ts";
import { inches, type Length, millimetres } from "../../src/engine/length/index.ts";

/** A job that once gave no plan or a wrong one, as small as it could be made. */
export type HardCase = {
  readonly what: string;
  readonly style: Style;
  readonly seed?: number;
  readonly draft: Draft;
};

type Rest = Partial<Omit<DraftPiece, "row" | "kind" | "width" | "height">>;

function piece(kind: Kind, width: Length, height: Length, rest: Rest = {}): Omit<DraftPiece, "row"> {
  return { kind, width, height, fabric: "Oat", colour: "#e5dcc3", ...rest };
}

function job(
  [width, height]: readonly [number, number],
  pieces: readonly Omit<DraftPiece, "row">[],
  rest: Partial<Draft> = {},
): Draft {
  return {
    unit: "in",
    back: { width: inches(width), height: inches(height) },
    time: "afternoon",
    plain: { name: "Unbleached cotton" },
    pieces: pieces.map((one, index) => ({ ...one, row: index + 1 })),
    ...rest,
  };
}

const bit = piece("strip", millimetres(26), millimetres(51));

export const hardCases: readonly HardCase[] = [
  {
    what: "a whole piece off the ruler's marks that is smaller than a cell may be stays out",
    style: "all-over",
    draft: job([12, 12], [piece("part-block", inches(31, 16), inches(35, 16)), bit]),
  },
  {
    what: "a whole narrow block off the ruler's marks stays out",
    style: "insert-across",
    draft: job([12, 80], [piece("block", millimetres(51), millimetres(26)), bit]),
  },
  {
    what: "triangles are sewn in pairs, also where they might be cut up",
    style: "centred",
    draft: job(
      [12, 12],
      [piece("triangle", millimetres(73), millimetres(73), { count: 2, keep: "cut" }), bit],
    ),
  },
  {
    what: "a half-square triangle is never cut up",
    style: "chunks",
    draft: job(
      [12, 80],
      [
        piece("half-square-triangle", inches(21, 8), inches(21, 8), { keep: "cut" }),
        piece("triangle", inches(6), inches(6), { count: 7 }),
      ],
    ),
  },
  {
    what: "a cross on a cushion",
    style: "cross",
    draft: job([12, 12], [piece("strip", inches(1), inches(2))]),
  },
  {
    what: "chunks on a small back",
    style: "chunks",
    seed: 2,
    draft: job(
      [16, 16],
      [
        piece("half-square-triangle", millimetres(115), millimetres(115), { keep: "cut" }),
        piece("block", inches(69, 8), inches(69, 8), { count: 3 }),
      ],
    ),
  },
  {
    what: "full-width strips on a cushion",
    style: "strippy",
    draft: job([12, 12], [piece("strip", millimetres(108), millimetres(225), { count: 9 }), bit]),
  },
  { what: "a line of blocks on a runner without blocks", style: "block-line", draft: job([12, 80], [bit]) },
  {
    what: "equal squares on a runner",
    style: "squares",
    draft: job([12, 80], [piece("strip", inches(1), inches(2))]),
  },
  {
    what: "a short strip's end that is wider than long goes back to the shelf",
    style: "insert-across",
    draft: job([12, 20], [piece("strip", inches(5), inches(5)), piece("strip", inches(15, 4), inches(3))]),
  },
  {
    what: "the time holds, freely on a runner",
    style: "all-over",
    seed: 4,
    draft: job(
      [18, 92],
      [
        piece("strip", inches(17, 4), inches(17, 4), { count: 9, keep: "trim" }),
        piece("square", inches(9, 4), inches(9, 4), { count: 6, use: "first" }),
        piece("square", millimetres(51), millimetres(51), { count: 5 }),
        piece("part-block", inches(61, 8), inches(61, 8), { count: 5, keep: "cut" }),
        piece("odd", millimetres(219), millimetres(697), { count: 9, keep: "whole" }),
      ],
      {
        floor: inches(3, 2),
        top: { width: inches(12), height: inches(86), method: "machine", extra: inches(3) },
      },
    ),
  },
  {
    what: "a half-square triangle that may be cut up keeps its square",
    style: "cross",
    draft: job([12, 12], [piece("half-square-triangle", inches(51, 8), inches(51, 8), { keep: "cut" })]),
  },
  {
    what: "a half-square triangle off the ruler's marks is whole or square",
    style: "block-line",
    draft: job(
      [12, 12],
      [
        piece("half-square-triangle", millimetres(74), millimetres(74), { count: 3, keep: "cut" }),
        piece("strip", inches(2), inches(1)),
      ],
    ),
  },
  {
    what: "the time holds with long whole strips",
    style: "all-over",
    draft: job(
      [12, 80],
      [
        piece("square", inches(2), inches(2), { count: 6 }),
        piece("strip", inches(45, 8), inches(2), { count: 2 }),
        piece("strip", millimetres(51), millimetres(312), { count: 9, keep: "whole" }),
      ],
      { floor: inches(3, 2) },
    ),
  },
];
