import type { ReactNode } from "react";
import { UpdateNotice } from "../offline/updateNotice.tsx";
import { screens } from "../screens/index.ts";
import styles from "./frame.module.css";
import { Page } from "./page.tsx";
import { ProjectDoor } from "./projectDoor.tsx";
import { hrefOf, type StepName, useRoute } from "./route.ts";
import { SavingNotice } from "./savingNotice.tsx";
import { Steps } from "./steps.tsx";
import { useFrameWords, useProject, useProjectState } from "./surroundings.ts";
import { Undo } from "./undo.tsx";

/** The app around its pages. */
export function Frame() {
  const words = useFrameWords();
  const route = useRoute();
  return (
    <>
      <button type="button" className={styles.skip} onClick={() => document.getElementById("main")?.focus()}>
        {words.skip}
      </button>
      {route.screen === "projects" ? (
        <AtTheStart />
      ) : (
        <ProjectDoor id={route.project} key={route.project}>
          <InProject step={route.screen} />
        </ProjectDoor>
      )}
    </>
  );
}

function AtTheStart() {
  return (
    <>
      <header className={styles.bar}>
        <Home />
      </header>
      <UpdateNotice />
      <Main>
        <Page name="projects" title={null} />
      </Main>
    </>
  );
}

function InProject({ step }: { readonly step: StepName }) {
  const project = useProject();
  const { title } = useProjectState().project;
  return (
    <>
      <header className={styles.bar}>
        <Home />
        <span className={styles.title}>{title}</span>
        <Steps project={project.id} />
        <Undo />
      </header>
      <UpdateNotice />
      <SavingNotice />
      <Main>
        <Page name={step} title={title} />
      </Main>
    </>
  );
}

function Home() {
  const words = useFrameWords();
  const isBuilt = screens.some(({ name }) => name === "projects");
  return isBuilt ? (
    <a className={styles.home} href={hrefOf({ screen: "projects" })} aria-label={words.toProjects}>
      {words.app}
    </a>
  ) : (
    <span className={styles.home}>{words.app}</span>
  );
}

function Main({ children }: { readonly children: ReactNode }) {
  return (
    <main id="main" tabIndex={-1} className={styles.main}>
      {children}
    </main>
  );
}
