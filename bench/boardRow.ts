import { viewsOf } from "../src/photo/camera.ts";
import { cameraOver, type SeenPaper } from "../src/photo/cameraFit.ts";
import { type Board, boardIn, type Grey } from "./chessboard.ts";

/** One photograph of a chessboard: lengths on it, by a camera that two small patches of its corners gave. */
export type BoardRow = {
  readonly name: string;
  readonly found: boolean;
  /** Of the patches' corners, in pixels. */
  readonly residual: number | null;
  readonly k1: number | null;
  /** In pixels. */
  readonly focal: number | null;
  /** Every length of four squares along rows and columns: measured less true, per cent of the true one. */
  readonly off: readonly number[];
};

const across = 9;
const down = 6;
const patch = 3;
const squares = 4;

export function boardRow(name: string, picture: Grey): BoardRow {
  const board = boardIn(picture, across, down);
  const none = { name, found: board !== null, residual: null, k1: null, focal: null, off: [] };
  if (board === null) return none;
  // As two sheets would lie, at opposite corners; each is told nothing of the other.
  const papers = [patchAt(board, 0, 0), patchAt(board, across - patch, down - patch)];
  const { width, height } = picture;
  const fit = cameraOver(papers, { width, height, isWide: true });
  if (fit === null) return none;
  const { focal, k1 } = fit.camera;
  return {
    name,
    found: true,
    residual: rounded(fit.residual),
    k1: rounded(k1),
    focal: rounded(focal),
    off: lengthsOff(board, viewsOf(fit.camera)).map(rounded),
  };
}

/** A square is one inch here. */
function patchAt(board: Board, column: number, row: number): SeenPaper {
  return board
    .slice(row, row + patch)
    .flatMap((places, y) => places.slice(column, column + patch).map((pixel, x) => [[x, y], pixel] as const));
}

function lengthsOff(board: Board, { toFloor }: ReturnType<typeof viewsOf>): readonly number[] {
  const floor = board.map((row) => row.map(toFloor));
  return floor.flatMap((row, y) =>
    row.flatMap((from, x) =>
      [row[x + squares], floor[y + squares]?.[x]].flatMap((to) =>
        from && to ? [100 * (Math.hypot(to[0] - from[0], to[1] - from[1]) / squares - 1)] : [],
      ),
    ),
  );
}

function rounded(value: number): number {
  return Number(value.toFixed(3)) + 0;
}
