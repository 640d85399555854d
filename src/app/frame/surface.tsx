import type { ReactNode } from "react";
import { UpdateNotice } from "../offline/updateNotice.tsx";
import { screens } from "../screens/index.ts";
import styles from "./frame.module.css";
import { hrefOf } from "./route.ts";
import { useFrameWords } from "./surroundings.ts";
import { ToSettings } from "./toSettings.tsx";

type SurfaceProps = {
  /** What stands in the bar behind the way home. */
  readonly bar?: ReactNode;
  readonly notices?: ReactNode;
  readonly children: ReactNode;
};

/** The bar, what has to be said, and the page below it. */
export function Surface({ bar, notices, children }: SurfaceProps) {
  return (
    <>
      <header className={styles.bar}>
        <Home />
        {bar}
        <ToSettings />
      </header>
      <UpdateNotice />
      {notices}
      <main id="main" tabIndex={-1} className={styles.main}>
        {children}
      </main>
    </>
  );
}

function Home() {
  const words = useFrameWords();
  const isBuilt = screens.some(({ name }) => name === "projects");
  return isBuilt ? (
    <a className={styles.home} href={hrefOf({ screen: "projects" })} aria-label={words.home}>
      {words.app}
    </a>
  ) : (
    <span className={styles.home}>{words.app}</span>
  );
}
