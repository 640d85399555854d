import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { exportEverything } from "../../../store/index.ts";
import { fileNameFor, hand, saveFile, usePreferences, useStore } from "../../frame/index.ts";
import styles from "./settings.module.css";
import { useSettingsTexts } from "./texts.ts";

/** All of it out in one file, and such a file in again. */
export function OneFile() {
  const texts = useSettingsTexts();
  const chosen = (files: FileList | null) => {
    const file = files?.[0];
    if (file !== undefined) hand(file);
  };
  return (
    <section className={styles.group} aria-labelledby="one-file">
      <h2 id="one-file">{texts.everything}</h2>
      <p className={styles.quiet}>{texts.everythingWhat}</p>
      <div className={styles.ways}>
        <SaveEverything />
        <FileTrigger acceptedFileTypes={[".verso"]} onSelect={chosen}>
          <Button className="button">{texts.openEverything}</Button>
        </FileTrigger>
      </div>
    </section>
  );
}

export function SaveEverything() {
  const texts = useSettingsTexts();
  const store = useStore();
  const [, preferences] = usePreferences();
  const [isBusy, setBusy] = useState(false);
  const save = async () => {
    setBusy(true);
    const now = Date.now();
    const { bytes, projects } = await exportEverything(store, now);
    saveFile(bytes, fileNameFor(texts.everythingFile(now)));
    preferences.copied(projects, now);
    setBusy(false);
  };
  return (
    <Button className="button" isDisabled={isBusy} onPress={() => void save()}>
      {texts.saveEverything}
    </Button>
  );
}
