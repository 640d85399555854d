import { Corners } from "../../parts/corners/corners.tsx";
import type { Marking } from "./marking.ts";
import type { TablePiece } from "./pieces.ts";
import type { TablePhoto } from "./table.ts";
import { usePhotoTexts } from "./tableFor.ts";

type HandlesProps = {
  readonly photo: TablePhoto & { readonly kind: "measured" };
  readonly piece: TablePiece;
  readonly marking: Marking;
};

/** The corners of the chosen piece: one that is dragged goes to the edge of the cloth nearby. */
export function Handles({ photo: { picture, found }, piece, marking }: HandlesProps) {
  const texts = usePhotoTexts();
  return (
    <Corners
      photo={{ picture, width: found.width, height: found.height }}
      pixels={piece.seen.pixels}
      nameOf={(corner) => texts.corner(corner + 1, piece.number)}
      onMoved={(pixels, corner, how) => marking.move(piece, pixels, how === "dragged" ? corner : "none")}
    />
  );
}
