import { type ReactNode, useEffect, useState } from "react";
import { Button } from "react-aria-components";
import type { ProjectHandle, SavingTrouble } from "../../store/index.ts";
import { Notice } from "./notice.tsx";
import { hrefOf } from "./route.ts";
import { Surface } from "./surface.tsx";
import { ProjectContext, useFrameWords, useStore, useStoreState } from "./surroundings.ts";

/** Opens a project for what stands inside; says so where there is none. */
export function ProjectDoor({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  const { project, again } = useOpenProject(id);
  const { trouble } = useStoreState();
  if (project === undefined) return <Opening />;
  if (project === null)
    return trouble === null ? <NoSuchProject /> : <NotReadable why={trouble} again={again} />;
  return <ProjectContext value={project}>{children}</ProjectContext>;
}

function Opening() {
  const words = useFrameWords();
  return (
    <Surface>
      <p className="patience">{words.opening}</p>
    </Surface>
  );
}

function NoSuchProject() {
  const words = useFrameWords();
  return (
    <Surface>
      <Notice title={words.noSuchProject} text={words.noSuchProjectWhat}>
        <a className="button next" href={hrefOf({ screen: "projects" })}>
          {words.toProjects}
        </a>
      </Notice>
    </Surface>
  );
}

function NotReadable({ why, again }: { readonly why: SavingTrouble; readonly again: () => void }) {
  const words = useFrameWords();
  return (
    <Surface>
      <Notice title={words.notReadable} text={words.notReadableWhat(why)}>
        <Button className="button next" onPress={again}>
          {words.tryAgain}
        </Button>
        <a className="button" href={hrefOf({ screen: "projects" })}>
          {words.toProjects}
        </a>
      </Notice>
    </Surface>
  );
}

type Opened = {
  /** `undefined`: still opening; `null`: there is none, or storage can't be read. */
  readonly project: ProjectHandle | null | undefined;
  readonly again: () => void;
};

/** It stays open when she goes to another page: coming back, she can undo what she did before. */
function useOpenProject(id: string): Opened {
  const store = useStore();
  const [attempt, setAttempt] = useState(0);
  const [opened, setOpened] = useState<{ readonly key: string; readonly project: ProjectHandle | null }>();
  const key = `${id} ${attempt}`;
  useEffect(() => {
    let here = true;
    void store.open(id).then((project) => here && setOpened({ key, project }));
    return () => {
      here = false;
    };
  }, [store, id, key]);
  return {
    project: opened?.key === key ? opened.project : undefined,
    again: () => setAttempt((tries) => tries + 1),
  };
}
