import { cellsAlongMarker, isBlack, papers, referencePages, targets } from "../../src/engine/cards/index.ts";
import { type Length, toNumber } from "../../src/engine/length/index.ts";
import { type Paint, type Rgb, rectangle, type Scene, type ScenePiece } from "./scene.ts";

const paper: Rgb = [0.86, 0.86, 0.85];
const ink: Rgb = [0.03, 0.03, 0.03];

/** A card of Letter, or a whole sheet, by its first marker. */
export function cardPiece({ first, at, degrees }: Scene["cards"][number]): ScenePiece {
  const markers = markersOf(first);
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const paint: Paint = (spot) => {
    const x = cosine * (spot[0] - at[0]) + sine * (spot[1] - at[1]);
    const y = cosine * (spot[1] - at[1]) - sine * (spot[0] - at[0]);
    for (const { black, left, top, cell } of markers) {
      const column = Math.floor((x - left) / cell);
      const row = Math.floor((y - top) / cell);
      const isOn = column >= 0 && row >= 0 && column < cellsAlongMarker && row < cellsAlongMarker;
      if (isOn) return black[row * cellsAlongMarker + column] ? ink : paper;
    }
    return paper;
  };
  return { outline: rectangle(at, sizeOf(first), degrees), paint };
}

function markersOf(first: number) {
  const target = targets.find(({ markers }) => markers[0]?.id === first);
  return (target?.markers ?? []).flatMap(({ id, corners: [from, , to] }) => {
    if (from === undefined || to === undefined) return [];
    const [left, top, right] = [inInches(from.x), inInches(from.y), inInches(to.x)];
    const black = Array.from({ length: cellsAlongMarker ** 2 }, (_, n) =>
      isBlack(id, Math.floor(n / cellsAlongMarker), n % cellsAlongMarker),
    );
    return [{ black, left, top, cell: (right - left) / cellsAlongMarker }];
  });
}

function sizeOf(first: number): readonly [number, number] {
  const page = referencePages(papers[0]).find(({ markers }) => markers.some(({ id }) => id === first));
  if (page === undefined) throw new Error(`no card carries marker ${first}`);
  const parts = page.kind === "cards" ? 2 : 1;
  return [inInches(page.size.width) / parts, inInches(page.size.height) / parts];
}

function inInches(length: Length): number {
  return toNumber(length, "in");
}
