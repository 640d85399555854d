import { lazy, Suspense } from "react";
import { screens } from "../screens/index.ts";
import styles from "./frame.module.css";
import { Page } from "./page.tsx";
import { ProjectDoor } from "./projectDoor.tsx";
import { type ScreenName, useRoute } from "./route.ts";
import { SavingNotice } from "./savingNotice.tsx";
import { Steps } from "./steps.tsx";
import { Surface } from "./surface.tsx";
import { useFrameWords, useProject, useProjectPart } from "./surroundings.ts";
import { Undo } from "./undo.tsx";

/** The app around its pages. */
export function Frame() {
  const words = useFrameWords();
  const route = useRoute();
  const isBuilt = screens.some(({ name }) => name === route.screen);
  return (
    <>
      <button type="button" className={styles.skip} onClick={() => document.getElementById("main")?.focus()}>
        {words.skip}
      </button>
      {route.screen === "projects" || !isBuilt || route.project === undefined ? (
        <Surface>
          <Page name={isBuilt ? route.screen : "projects"} title={null} />
        </Surface>
      ) : (
        <ProjectDoor id={route.project} key={route.project}>
          <InProject step={route.screen} />
        </ProjectDoor>
      )}
    </>
  );
}

function InProject({ step }: { readonly step: ScreenName }) {
  const project = useProject();
  const title = useProjectPart((now) => now.title);
  const bar = (
    <>
      <span className={styles.title}>{title}</span>
      <Steps project={project.id} />
      <Undo />
    </>
  );
  return (
    <Surface bar={bar} notices={<Notices />}>
      <Page name={step} title={title} />
    </Surface>
  );
}

// Nothing in it is needed to see the page; it comes once that is there.
const Keeping = lazy(() => import("./keeping.tsx"));

function Notices() {
  return (
    <>
      <SavingNotice />
      <Suspense>
        <Keeping />
      </Suspense>
    </>
  );
}
