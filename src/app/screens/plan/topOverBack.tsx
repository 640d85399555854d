import type { Drawing } from "../../../engine/drawing/index.ts";
import { topPhotoTexts } from "../../../words/index.ts";
import { boxOnPage } from "../../parts/drawing/page.ts";
import { usePicture } from "../../parts/pictures.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./figure.module.css";

type TopOverBackProps = {
  /** As it is seen from the front. */
  readonly drawing: Drawing;
  readonly picture: string;
  /** 0: it is clear; 1: nothing of the back is seen through it. */
  readonly covering: number;
};

/** The finished top, right side up, over the back that lies behind it: below the seams, so that those are seen. */
export function TopOverBack({ drawing, picture, covering }: TopOverBackProps) {
  const address = usePicture(picture);
  if (address === null || drawing.cutOff === null) return null;
  const box = boxOnPage(drawing.cutOff.outline, drawing, "large");
  return <image {...box} href={address} preserveAspectRatio="none" opacity={covering} />;
}

type CoveringProps = { readonly covering: number; readonly onCovering: (covering: number) => void };

export function Covering({ covering, onCovering }: CoveringProps) {
  const texts = useTexts(topPhotoTexts);
  return (
    <label className={styles.covering}>
      {texts.covering}
      <input
        type="range"
        min={0}
        max={1}
        step={0.1}
        value={covering}
        onChange={({ target }) => onCovering(target.valueAsNumber)}
      />
    </label>
  );
}
