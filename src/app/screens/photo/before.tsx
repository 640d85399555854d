import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { type Paper, papers } from "../../../engine/cards/index.ts";
import { saveFile, useLocale, useProjectContent } from "../../frame/index.ts";
import { LengthField } from "../../parts/lengthField/lengthField.tsx";
import { printedOf } from "../../parts/paper.ts";
import { photoTypes } from "../../parts/photoTypes.ts";
import { cardsToPrint } from "../../worker/photo/printCards.ts";
import styles from "./before.module.css";
import { usePhotoTexts, useTable, useTableState } from "./tableFor.ts";

/** What to do before the photo is taken, the cards to print, and the ways in. */
export function Before({ isOpen }: { readonly isOpen: boolean }) {
  const texts = usePhotoTexts();
  return (
    <section className={styles.before}>
      <details open={isOpen} className={styles.details}>
        <summary>
          <h2>{texts.before}</h2>
        </summary>
        <div className={styles.columns}>
          <div className={styles.column}>
            <ol className={styles.how}>
              {texts.how.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
            <h3>{texts.cannot}</h3>
            <p>{texts.cannotKnow}</p>
          </div>
          <Cards />
        </div>
      </details>
      <Ways />
    </section>
  );
}

function Ways() {
  const texts = usePhotoTexts();
  const table = useTable();
  const { photos } = useTableState();
  const add = (files: FileList | null) => files !== null && table.addPhotos([...files]);
  const kind = photos.length === 0 ? "button next" : "button";
  return (
    <div className={styles.ways}>
      <span className={styles.camera}>
        <FileTrigger acceptedFileTypes={photoTypes} defaultCamera="environment" onSelect={add}>
          <Button className={kind}>{texts.take}</Button>
        </FileTrigger>
      </span>
      <FileTrigger acceptedFileTypes={photoTypes} allowsMultiple onSelect={add}>
        <Button className={`${kind} ${styles.choose}`}>{texts.choose}</Button>
      </FileTrigger>
    </div>
  );
}

function Cards() {
  const texts = usePhotoTexts();
  const table = useTable();
  const { paper } = useTableState();
  const choosePaper = (value: string) => {
    const chosen = papers.find((one) => one === value);
    if (chosen !== undefined) table.setPaper(chosen);
  };
  return (
    <div className={styles.cards}>
      <p>{texts.printWhat}</p>
      <div className={styles.print}>
        <label className={styles.paper}>
          <span>{texts.paper}</span>
          <select value={paper} onChange={(event) => choosePaper(event.target.value)}>
            {papers.map((one) => (
              <option key={one} value={one}>
                {texts.papers[one]}
              </option>
            ))}
          </select>
        </label>
        <PrintCards paper={paper} />
      </div>
      <Bar />
    </div>
  );
}

function PrintCards({ paper }: { readonly paper: Paper }) {
  const texts = usePhotoTexts();
  const locale = useLocale();
  const [state, setState] = useState<"ready" | "making" | "failed">("ready");
  const print = async () => {
    setState("making");
    try {
      const unit = paper === "a4" ? "cm" : "in";
      const pdf = await cardsToPrint({ paper, locale, unit, made: Date.now() });
      saveFile(pdf, `${texts.cardsFile}.pdf`, "application/pdf");
      setState("ready");
    } catch {
      setState("failed");
    }
  };
  return (
    <>
      <Button className="button" isDisabled={state === "making"} onPress={() => void print()}>
        {state === "making" ? texts.printing : texts.print}
      </Button>
      <p role="status" className={styles.trouble}>
        {state === "failed" ? texts.notPrinted : ""}
      </p>
    </>
  );
}

/** What her ruler says of what came out of the printer. */
function Bar() {
  const texts = usePhotoTexts();
  const table = useTable();
  const state = useTableState();
  const { unit } = useProjectContent().settings;
  const isFar = state.bar?.value != null && printedOf(state) === null;
  return (
    <LengthField
      label={texts.bar(state.paper)}
      unit={unit}
      measured={state.bar}
      onChange={table.setBar}
      hint={texts.barWhat}
      trouble={isFar ? texts.barFar : undefined}
      texts={{ problem: texts.lengthProblem, meant: texts.meant }}
    />
  );
}
