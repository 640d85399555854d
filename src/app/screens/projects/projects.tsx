import { lazy, Suspense, useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import type { ProjectSummary } from "../../../store/index.ts";
import {
  go,
  newBackSettings,
  useLocale,
  useOpenHanded,
  usePreferences,
  useStore,
  useStoreState,
} from "../../frame/index.ts";
import { BackInList } from "./backInList.tsx";
import { type NotOpened, useFileOver, useOpenFile } from "./openFile.ts";
import styles from "./projects.module.css";
import { Removed, RemovedJustNow } from "./removed.tsx";
import { useProjectsTexts } from "./texts.ts";
import { usePictures } from "./usePictures.ts";

/** Her backs, the sample apart from them, and the ways to a new one. */
export default function Projects() {
  const { projects } = useStoreState();
  const { open, notOpened, takenIn, forget } = useOpenFile();
  useOpenHanded(open);
  const isOver = useFileOver();
  const [gone, setGone] = useState<ProjectSummary | null>(null);
  const texts = useProjectsTexts();
  if (projects === null) return null;
  return (
    <div className={styles.page}>
      <RemovedJustNow project={gone} onBack={() => setGone(null)} />
      {notOpened !== null && <CouldNotOpen {...notOpened} onClose={forget} />}
      <div role="status">{takenIn !== null && <p className={styles.notice}>{texts.takenIn(takenIn)}</p>}</div>
      {projects.length === 0 ? (
        <Welcome onOpen={open} />
      ) : (
        <Backs projects={projects} onOpen={open} onRemoved={setGone} />
      )}
      <Removed except={gone} />
      {isOver && <p className={styles.over}>{texts.dropHere}</p>}
    </div>
  );
}

// The words come first; what is drawn beside them is fetched once they are there.
const Glimpse = lazy(() => import("./glimpse.tsx"));

type Ways = { readonly onOpen: (file: File) => void };

function Welcome({ onOpen }: Ways) {
  const texts = useProjectsTexts();
  return (
    <div className={styles.welcome}>
      <section>
        <h1>{texts.welcome}</h1>
        <p>{texts.welcomeWhat}</p>
        <div className={styles.ways}>
          <TrySample isNext />
          <NewBack />
          <OpenFile onOpen={onOpen} />
        </div>
      </section>
      <div className={styles.glimpsePlace}>
        <Suspense>
          <Glimpse />
        </Suspense>
      </div>
    </div>
  );
}

type BacksProps = Ways & {
  readonly projects: readonly ProjectSummary[];
  readonly onRemoved: (project: ProjectSummary) => void;
};

function Backs({ projects, onOpen, onRemoved }: BacksProps) {
  const texts = useProjectsTexts();
  const pictureOf = usePictures(projects);
  const list = (some: readonly ProjectSummary[]) => (
    <ul className={styles.backs}>
      {some.map((project) => (
        <BackInList key={project.id} project={project} picture={pictureOf(project)} onRemoved={onRemoved} />
      ))}
    </ul>
  );
  const hers = projects.filter(({ sample }) => !sample);
  const samples = projects.filter(({ sample }) => sample);
  return (
    <>
      <div className={styles.head}>
        <h1>{texts.title}</h1>
        <div className={styles.ways}>
          <NewBack isNext />
          <OpenFile onOpen={onOpen} />
        </div>
      </div>
      {hers.length > 0 && list(hers)}
      <section className={styles.sample}>
        <h2>{texts.sample}</h2>
        <p className={styles.quiet}>{texts.sampleWhat}</p>
        {samples.length > 0 ? list(samples) : <TrySample />}
      </section>
    </>
  );
}

/** A second press while the first is under way would make a second project. */
function useOnce(): readonly [isBusy: boolean, once: (act: () => Promise<void>) => void] {
  const [isBusy, setBusy] = useState(false);
  const once = (act: () => Promise<void>) => {
    if (isBusy) return;
    setBusy(true);
    void act().finally(() => setBusy(false));
  };
  return [isBusy, once];
}

function NewBack({ isNext = false }: { readonly isNext?: boolean }) {
  const texts = useProjectsTexts();
  const store = useStore();
  const [{ newBacks }] = usePreferences();
  const locale = useLocale();
  const [isBusy, once] = useOnce();
  const begin = async () => {
    const { id } = await store.create({ settings: newBackSettings(newBacks, locale) });
    go({ screen: "size", project: id });
  };
  return (
    <Button className={isNext ? "button next" : "button"} isDisabled={isBusy} onPress={() => once(begin)}>
      {texts.newBack}
    </Button>
  );
}

function TrySample({ isNext = false }: { readonly isNext?: boolean }) {
  const texts = useProjectsTexts();
  const store = useStore();
  const [isBusy, once] = useOnce();
  const begin = async () => {
    const { sampleProject } = await import("./sample.ts");
    const { id } = await store.create(sampleProject(texts.sampleTitle, texts.sampleName));
    go({ screen: "plan", project: id });
  };
  return (
    <Button className={isNext ? "button next" : "button"} isDisabled={isBusy} onPress={() => once(begin)}>
      {texts.trySample}
    </Button>
  );
}

function OpenFile({ onOpen }: Ways) {
  const texts = useProjectsTexts();
  const chosen = (files: FileList | null) => {
    const file = files?.[0];
    if (file !== undefined) onOpen(file);
  };
  return (
    <FileTrigger acceptedFileTypes={[".verso"]} onSelect={chosen}>
      <Button className="button">{texts.openFile}</Button>
    </FileTrigger>
  );
}

function CouldNotOpen({ file, problems, onClose }: NotOpened & { readonly onClose: () => void }) {
  const texts = useProjectsTexts();
  const reasons = [...new Set(problems.map(texts.problem))];
  return (
    <div role="alert" className={styles.notice}>
      <p>
        <strong>{texts.notOpened(file)}</strong> {texts.nothingChanged}
      </p>
      <ul>
        {reasons.slice(0, 5).map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      <Button className="button" onPress={onClose}>
        {texts.close}
      </Button>
    </div>
  );
}
