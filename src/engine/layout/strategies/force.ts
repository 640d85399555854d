import { type Filling, place, type Strategy } from "../filling.ts";
import type { Face, Lot } from "../stock.ts";
import type { Twig } from "../twig.ts";

/** Puts this piece into a corner of the region, come what may, and fills what it leaves beside and below it. */
export function force(lot: Lot): Strategy {
  return (filling, width, height) => {
    const fitting = lot.faces.filter((face) => cellIn(filling, face, width, height) !== null);
    if (fitting.length === 0) return null;
    const face = fitting[filling.random.below(fitting.length)] as Face;
    const cell = cellIn(filling, face, width, height);
    if (cell === null || !filling.pool.offers(face, cell.width, cell.height)) return null;
    return corner(filling, place(filling, face, cell.width, cell.height), width, height);
  };
}

type CellSize = { width: number; height: number };

function cellIn(filling: Filling, face: Face, width: number, height: number): CellSize | null {
  const reach = face.lot.roll ? filling.pool.reach(face.lot) : Number.POSITIVE_INFINITY;
  const across = side(
    filling,
    face.minWidth,
    face.along === "width" ? Math.min(reach, face.maxWidth) : face.maxWidth,
    width,
  );
  const down = side(
    filling,
    face.minHeight,
    face.along === "height" ? Math.min(reach, face.maxHeight) : face.maxHeight,
    height,
  );
  return across === null || down === null ? null : { width: across, height: down };
}

/** The largest side that leaves nothing beside it, or enough for a cell. */
function side(filling: Filling, least: number, most: number, room: number): number | null {
  if (most >= room && least <= room) return room;
  const largest = Math.min(most, room - filling.stock.smallest);
  return largest >= least ? largest : null;
}

function corner(filling: Filling, piece: Twig, width: number, height: number): Twig {
  const { twigs } = filling;
  const right = width - piece.width;
  const below = height - piece.height;
  const besideFirst = below === 0 || (right > 0 && filling.random.chance(0.5));
  if (besideFirst) {
    const top = right === 0 ? piece : twigs.join(true, [piece, filling.fill(right, piece.height)]);
    return below === 0 ? top : twigs.join(false, [top, filling.fill(width, below)]);
  }
  const left = twigs.join(false, [piece, filling.fill(piece.width, below)]);
  return right === 0 ? left : twigs.join(true, [left, filling.fill(right, height)]);
}
