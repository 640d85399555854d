import { Input, Label, TextField } from "react-aria-components";
import { sizeTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { Fractions } from "../../parts/lengthField/fractions.tsx";
import fieldStyles from "../../parts/lengthField/lengthField.module.css";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import { useTexts } from "../../parts/texts.ts";
import styles from "./size.module.css";
import type { SizeFacts } from "./sizeFacts.ts";

/** The plain cloth that fills what the leftovers don't cover. */
export function PlainClothFields({ facts }: { readonly facts: SizeFacts }) {
  const texts = useTexts(sizeTexts);
  const project = useProject();
  const { plain, settings } = useProjectContent();
  return (
    <section className={styles.group}>
      <h2>{texts.cloth}</h2>
      <p className={styles.quiet}>{texts.clothWhat}</p>
      <div className={styles.clothFields}>
        <TextField
          className={`${fieldStyles.field}`}
          value={plain.name}
          onChange={(name) => project.setPlain({ name })}
          autoComplete="off"
        >
          <Label className={`${fieldStyles.label}`}>{texts.clothName}</Label>
          <Input className={`${fieldStyles.input}`} maxLength={200} />
        </TextField>
        <label className={fieldStyles.field}>
          <span className={fieldStyles.label}>{texts.clothColour}</span>
          <input
            type="color"
            className={styles.colour}
            value={facts.plainColour}
            onChange={({ target }) => project.setPlain({ colour: target.value })}
          />
        </label>
      </div>
      <Fractions unit={settings.unit} label={texts.eighths}>
        <LengthField
          label={texts.clothWidth}
          unit={settings.unit}
          measured={settings.clothWidth}
          onChange={(clothWidth) => project.setSettings({ clothWidth })}
          hint={texts.clothWidthUsual(facts.usualClothWidth)}
          texts={texts}
        />
      </Fractions>
    </section>
  );
}

/** What the whole back would take of one cloth, in plain words. */
export function AllOfOneCloth({ facts }: { readonly facts: SizeFacts }) {
  const texts = useTexts(sizeTexts);
  if (facts.oneCloth === null) return null;
  return (
    <section className={styles.group}>
      <h2>{texts.oneCloth}</h2>
      <ul className={styles.lines}>
        {texts.backings(facts.oneCloth).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
