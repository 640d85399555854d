import { useProjectIfAny } from "../../frame/index.ts";
import { DeleteAll } from "./deleteAll.tsx";
import { Kept } from "./kept.tsx";
import { OneFile } from "./oneFile.tsx";
import { OnScreen } from "./onScreen.tsx";
import { Printing } from "./printing.tsx";
import styles from "./settings.module.css";
import { NewBacks, ThisBack } from "./sewing.tsx";
import { useSettingsTexts } from "./texts.ts";

/** How Verso works on this device, what it keeps there, and how all of it leaves. */
export default function Settings() {
  const texts = useSettingsTexts();
  const project = useProjectIfAny();
  return (
    <div className={styles.page}>
      <h1>{texts.title}</h1>
      <div className={styles.columns}>
        <div className={styles.column}>
          {project !== null && <ThisBack project={project} />}
          <NewBacks />
          <OnScreen />
          <Printing />
        </div>
        <div className={styles.column}>
          <Kept />
          <OneFile />
          <DeleteAll />
        </div>
      </div>
    </div>
  );
}
