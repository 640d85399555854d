import { plain, rectangle, type ScenePiece, type Spot } from "./scene.ts";

export type MadeBoard = {
  readonly pieces: readonly ScenePiece[];
  /** Where squares meet inside, row by row. */
  readonly corners: readonly (readonly Spot[])[];
};

/** A chessboard of so many squares of one inch about the middle of the floor, turned, with a white margin. */
export function madeBoard(across: number, down: number, degrees: number): MadeBoard {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const on = (x: number, y: number): Spot => {
    const [u, v] = [x - across / 2, y - down / 2];
    return [cosine * u - sine * v, sine * u + cosine * v];
  };
  const cells = Array.from(
    { length: across * down },
    (_, at) => [at % across, Math.floor(at / across)] as const,
  );
  const black = cells
    .filter(([x, y]) => (x + y) % 2 === 0)
    .map(([x, y]) => ({
      outline: rectangle(on(x + 0.5, y + 0.5), [1, 1], degrees),
      paint: plain(0.04, 0.04, 0.04),
    }));
  const white = { outline: rectangle([0, 0], [across + 1, down + 1], degrees), paint: plain(0.8, 0.8, 0.8) };
  const corners = Array.from({ length: down - 1 }, (_, y) =>
    Array.from({ length: across - 1 }, (__, x) => on(x + 1, y + 1)),
  );
  return { pieces: [...black, white], corners };
}
