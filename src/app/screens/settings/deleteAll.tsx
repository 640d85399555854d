import { useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { go, usePreferences, useStore, useStoreState } from "../../frame/index.ts";
import { SaveEverything } from "./oneFile.tsx";
import styles from "./settings.module.css";
import { useSettingsTexts } from "./texts.ts";

/** Everything away: asked once, with a copy offered first. */
export function DeleteAll() {
  const texts = useSettingsTexts();
  const [isAsking, setAsking] = useState(false);
  return (
    <section className={styles.group} aria-labelledby="delete-all">
      <h2 id="delete-all">{texts.deleteAll}</h2>
      {isAsking ? (
        <Asking onKeep={() => setAsking(false)} />
      ) : (
        <>
          <p className={styles.quiet}>{texts.deleteAllWhat}</p>
          <div className={styles.ways}>
            <Button className="button" onPress={() => setAsking(true)}>
              {texts.deleteAll}
            </Button>
          </div>
        </>
      )}
    </section>
  );
}

function Asking({ onKeep }: { readonly onKeep: () => void }) {
  const texts = useSettingsTexts();
  const { projects } = useStoreState();
  const question = useRef<HTMLParagraphElement>(null);
  const [isFailed, setFailed] = useState(false);
  const wipe = useWipe(() => setFailed(true));
  // What was pressed is gone, and this is to be read before anything is.
  useEffect(() => question.current?.focus(), []);
  return (
    <div className={styles.asking}>
      <p ref={question} tabIndex={-1}>
        {texts.deleteAllAsk(projects?.length ?? 0)}
      </p>
      <div className={styles.ways}>
        <SaveEverything />
        <Button className="button" onPress={onKeep}>
          {texts.keepAll}
        </Button>
        <Button className="button" onPress={() => void wipe()}>
          {texts.deleteAllNow}
        </Button>
      </div>
      <div role="alert">{isFailed && <p>{texts.notDeleted}</p>}</div>
    </div>
  );
}

function useWipe(onFailure: () => void): () => Promise<void> {
  const store = useStore();
  const [, preferences] = usePreferences();
  return async () => {
    if (!(await store.wipeAll())) return onFailure();
    preferences.forget();
    go({ screen: "projects" });
  };
}
