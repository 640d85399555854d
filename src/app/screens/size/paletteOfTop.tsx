import { ToggleButton } from "react-aria-components";
import { readColour } from "../../../engine/cloth/index.ts";
import type { TopPhoto } from "../../../files/index.ts";
import { topPhotoTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./photoOfTop.module.css";
import sizeStyles from "./size.module.css";

/** The top's main colours in swatches and words; each can be the plain cloth's. */
export function PaletteOfTop({ colours }: Pick<TopPhoto, "colours">) {
  const texts = useTexts(topPhotoTexts);
  const project = useProject();
  const { plain } = useProjectContent();
  const read = colours.flatMap(({ colour, share }) => {
    const lab = readColour(colour)?.lab;
    return lab === undefined ? [] : [{ colour, share, lab }];
  });
  if (read.length === 0) return null;
  return (
    <div className={styles.palette}>
      <h3>{texts.palette}</h3>
      <p className={sizeStyles.quiet}>{texts.paletteWhat}</p>
      <ul className={styles.colours}>
        {read.map(({ colour, share, lab }) => (
          <li key={colour}>
            <ToggleButton
              className={`${styles.colour}`}
              aria-label={texts.forPlain(lab, share)}
              isSelected={plain.colour === colour}
              onChange={(isTaken) => project.setPlain({ colour: isTaken ? colour : "" })}
            >
              <svg className={`cloth ${styles.swatch}`} viewBox="0 0 1 1" aria-hidden="true">
                <rect width="1" height="1" fill={colour} />
              </svg>
              {texts.colour(lab, share)}
            </ToggleButton>
          </li>
        ))}
      </ul>
    </div>
  );
}
