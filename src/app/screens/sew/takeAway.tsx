import { useState } from "react";
import { Button } from "react-aria-components";
import type { PlanDocument } from "../../../files/index.ts";
import { type TakeAway, takeAways, takeAwayTexts } from "../../../words/index.ts";
import { canShare, fileNameFor, giveFile, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import styles from "./takeAway.module.css";
import { bytesOf, types } from "./takenAway.ts";

/** The kept plan as files of her own, through the share sheet where there is one. */
export function TakeItWithYou({ plan }: { readonly plan: PlanDocument }) {
  const texts = useTexts(takeAwayTexts);
  const project = useProjectContent();
  const [isFailed, setFailed] = useState(false);
  const nameFor = (form: TakeAway) => {
    const title = form === "table" ? texts.tableName(project.title) : project.title;
    return fileNameFor(title).replace(/\.verso$/, form === "table" ? ".csv" : `.${form}`);
  };
  const give = async (form: TakeAway) => {
    const bytes = await bytesOf(form, { project, plan, texts });
    setFailed(bytes === null);
    if (bytes !== null) await giveFile(bytes, nameFor(form), types[form]);
  };
  return (
    <details className={`${styles.take} notPrinted`}>
      <summary>{texts.heading}</summary>
      <p className={styles.quiet}>{texts.what}</p>
      <div className={styles.ways}>
        {takeAways.map((form) => (
          <Button key={form} className="button" onPress={() => void give(form)}>
            {canShare(nameFor(form), types[form]) ? texts.share[form] : texts.form[form]}
          </Button>
        ))}
      </div>
      <p role="alert">{isFailed ? texts.notMade : ""}</p>
    </details>
  );
}
