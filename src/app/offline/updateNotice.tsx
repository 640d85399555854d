import { useState, useSyncExternalStore } from "react";
import { Button } from "react-aria-components";
import styles from "../frame/bars.module.css";
import { useFrameWords } from "../frame/surroundings.ts";
import { laterVerso } from "./laterVerso.ts";

/** Says once that a later Verso is there. What she has open goes on working; nothing is renewed unasked. */
export function UpdateNotice() {
  const words = useFrameWords();
  const ready = useSyncExternalStore(laterVerso.subscribe, laterVerso.isReady);
  const [putOff, setPutOff] = useState(false);
  return (
    <div role="status" className={styles.notices}>
      {ready && !putOff && (
        <div className={styles.bar}>
          <p>{words.updateReady}</p>
          <span className={styles.ways}>
            <Button className="button" onPress={() => laterVerso.use()}>
              {words.updateNow}
            </Button>
            <Button className="button plain" onPress={() => setPutOff(true)}>
              {words.updateLater}
            </Button>
          </span>
        </div>
      )}
    </div>
  );
}
