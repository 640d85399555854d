import { type Paper, papers } from "../../../engine/cards/index.ts";
import { photoTexts } from "../../../words/index.ts";
import { useLocale, usePreferences } from "../../frame/index.ts";
import { Choice } from "../../parts/choice/choice.tsx";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import { paperFor, printedOf } from "../../parts/paper.ts";
import styles from "./settings.module.css";
import { useSettingsTexts } from "./texts.ts";

/** What she prints on. */
export function Printing() {
  const texts = useSettingsTexts();
  const locale = useLocale();
  const [now, preferences] = usePreferences();
  return (
    <section className={styles.group} aria-labelledby="printing">
      <h2 id="printing">{texts.printing}</h2>
      <Choice
        label={texts.paper}
        value={paperFor(now, locale)}
        options={papers.map((value) => ({ value, label: texts.papers[value] }))}
        onChange={(paper) => preferences.change({ paper })}
      />
      <p className={styles.quiet}>{texts.paperWhat}</p>
      <Bar paper={paperFor(now, locale)} />
    </section>
  );
}

/** What her ruler says of the line on the cards that she printed. */
function Bar({ paper }: { readonly paper: Paper }) {
  const unit = paper === "a4" ? "cm" : "in";
  const texts = photoTexts(useLocale(), unit);
  const [{ bars }, preferences] = usePreferences();
  const bar = bars[paper];
  const isFar = bar !== null && bar.value !== null && printedOf({ bar, paper }) === null;
  return (
    <LengthField
      label={texts.bar(paper)}
      unit={unit}
      measured={bar}
      onChange={(measured) => preferences.change({ bars: { ...bars, [paper]: measured } })}
      hint={texts.barWhat}
      trouble={isFar ? texts.barFar : undefined}
      texts={{ problem: texts.lengthProblem, meant: texts.meant }}
    />
  );
}
