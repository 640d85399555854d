import { useEffect, useRef } from "react";
import { Button } from "react-aria-components";
import type { ProjectSummary } from "../../../store/index.ts";
import { useStore, useStoreState } from "../../frame/index.ts";
import styles from "./projects.module.css";
import { useProjectsTexts } from "./texts.ts";

type RemovedJustNowProps = { readonly project: ProjectSummary | null; readonly onBack: () => void };

/** Says what was deleted and stays, so that it can be brought back without haste. */
export function RemovedJustNow({ project, onBack }: RemovedJustNowProps) {
  const texts = useProjectsTexts();
  const store = useStore();
  const button = useRef<HTMLButtonElement>(null);
  // What had the focus is gone.
  useEffect(() => {
    if (project !== null) button.current?.focus();
  }, [project]);
  const bringBack = async (id: string) => {
    await store.restore(id);
    onBack();
  };
  return (
    <div role="status" className={styles.status}>
      {project !== null && (
        <div className={styles.notice}>
          <p>{texts.removed(project.title)}</p>
          <Button ref={button} className="button" onPress={() => void bringBack(project.id)}>
            {texts.bringBack}
          </Button>
        </div>
      )}
    </div>
  );
}

/** What was deleted before. */
export function Removed({ except }: { readonly except: ProjectSummary | null }) {
  const texts = useProjectsTexts();
  const store = useStore();
  const removed = useStoreState().removed.filter(({ id }) => id !== except?.id);
  if (removed.length === 0) return null;
  return (
    <details className={styles.removed}>
      <summary>{texts.removedHeading}</summary>
      <p className={styles.quiet}>{texts.removedWhat}</p>
      <ul>
        {removed.map(({ id, title }) => (
          <li key={id}>
            <span>{title}</span>
            <Button
              className="button"
              aria-label={texts.bringBackOf(title)}
              onPress={() => void store.restore(id)}
            >
              {texts.bringBack}
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
