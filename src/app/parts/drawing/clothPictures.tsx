import { type ReactNode, useId, useMemo } from "react";
import { type Drawing, type LyingCloth, lyingCloth, type Scale } from "../../../engine/drawing/index.ts";
import type { PlanDocument } from "../../../files/index.ts";
import { type KeptPicture, usePictures } from "../pictures.ts";
import { scaleOnPage } from "./page.ts";
import { tilesOf } from "./tiles.ts";

type Photographed = {
  readonly drawing: Drawing;
  readonly plan: Pick<PlanDocument, "pieces" | "seam">;
  /** The picture of each piece of the plan that has one, by the piece's id. */
  readonly pictureOf: ReadonlyMap<string, string>;
};

/** Her own cloth over the large drawing of a plan or of a step; null while there is none to be seen. */
export function useClothPictures({ drawing, plan, pictureOf }: Photographed): ReactNode {
  const lying = useMemo(
    () => lyingCloth(drawing, plan.pieces, plan.seam).filter(({ piece }) => pictureOf.has(piece)),
    [drawing, plan, pictureOf],
  );
  const pictures = usePictures(lying.map(({ piece }) => pictureOf.get(piece) ?? ""));
  // The same cloth is the same element, so that a drawing is drawn anew only where something changed.
  return useMemo(() => {
    if (pictures.size === 0) return null;
    const scale = scaleOnPage(drawing, "large");
    return lying.map((cloth, index) => {
      const picture = pictures.get(pictureOf.get(cloth.piece) ?? "");
      // biome-ignore lint/suspicious/noArrayIndexKey: a patch is known by its place alone
      return picture && <Cloth key={index} cloth={cloth} picture={picture} scale={scale} />;
    });
  }, [drawing, lying, pictures, pictureOf]);
}

type ClothProps = {
  readonly cloth: LyingCloth;
  readonly picture: KeptPicture;
  readonly scale: Scale;
};

function Cloth({ cloth, picture, scale }: ClothProps) {
  const id = useId();
  const tiles = tilesOf(cloth, picture);
  if (tiles === null) return null;
  const outline = cloth.outline.map(({ x, y }) => `${scale(x)} ${scale(y)}`).join("L");
  const [a, b, c, d, e, f] = cloth.turn;
  return (
    <g clipPath={`url(#${CSS.escape(id)})`}>
      <clipPath id={id}>
        <path d={`M${outline}Z`} />
      </clipPath>
      <g transform={`matrix(${a} ${b} ${c} ${d} ${scale(e)} ${scale(f)})`}>
        <g transform={tiles.isTurned ? `matrix(0 1 -1 0 ${scale(cloth.size.width)} 0)` : undefined}>
          {tiles.boxes.map(({ y, width, height }) => (
            <image
              key={y}
              href={picture.address}
              y={scale(y)}
              width={scale(width)}
              height={scale(height)}
              preserveAspectRatio="none"
            />
          ))}
        </g>
      </g>
    </g>
  );
}
