import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import type { Preferences, StoreState } from "../../../store/index.ts";
import type { CopiesOutside } from "../../../words/index.ts";
import { usePreferences, useStore, useStoreState } from "../../frame/index.ts";
import { keepsApart } from "../../frame/keptApart.ts";
import { askReadiness, type Readiness } from "../../offline/readiness.ts";
import styles from "./settings.module.css";
import { useSettingsTexts } from "./texts.ts";

/** What this device keeps, how safely, and whether Verso needs a network. */
export function Kept() {
  const texts = useSettingsTexts();
  const store = useStore();
  const { space, projects } = useStoreState();
  const [{ copies }] = usePreferences();
  useEffect(() => void store.lookAtDevice(), [store]);
  return (
    <section className={styles.group} aria-labelledby="kept">
      <h2 id="kept">{texts.kept}</h2>
      <p>{texts.keptWhat}</p>
      <Persistence />
      {space !== null && <p>{texts.space(space.used, space.quota)}</p>}
      {keepsApart() && <p>{texts.keptApart}</p>}
      <p>{texts.copies(copiesOutside(projects ?? [], copies))}</p>
      <h3>{texts.offline}</h3>
      <WithoutNetwork />
    </section>
  );
}

function Persistence() {
  const texts = useSettingsTexts();
  const store = useStore();
  const { persisted } = useStoreState();
  const [isRefused, setRefused] = useState(false);
  if (persisted === null) return null;
  if (persisted) return <p>{texts.persisted}</p>;
  const ask = async () => setRefused(!(await store.askToPersist()));
  return (
    <>
      <p>{texts.notPersisted}</p>
      <Button className="button" onPress={() => void ask()}>
        {texts.askToPersist}
      </Button>
      <div role="status">{isRefused && <p>{texts.refused}</p>}</div>
    </>
  );
}

function copiesOutside(
  projects: NonNullable<StoreState["projects"]>,
  copies: Preferences["copies"],
): CopiesOutside {
  const hers = projects.filter(({ sample }) => !sample);
  const times = hers.flatMap(({ id }) => copies[id]?.at ?? []);
  const without = hers.filter(({ id, changedAt }) => (copies[id]?.at ?? -1) < changedAt);
  return {
    backs: hers.length,
    without: without.length,
    lastAt: times.length === 0 ? null : Math.max(...times),
  };
}

/** Milliseconds between two questions while something is missing. */
const askAgain = 2_000;

function WithoutNetwork() {
  const texts = useSettingsTexts();
  const readiness = useReadiness();
  return <p role="status">{readiness === null ? "" : texts.ready(readiness)}</p>;
}

/** What the service worker says; asked again until everything is there. */
function useReadiness(): Readiness | null {
  const [readiness, setReadiness] = useState<Readiness | null>(null);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    let here = true;
    const ask = async () => {
      const now = await askReadiness();
      if (!here) return;
      setReadiness(now);
      if (now.kind === "coming" || now.kind === "missing") timer = setTimeout(() => void ask(), askAgain);
    };
    void ask();
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, []);
  return readiness;
}
