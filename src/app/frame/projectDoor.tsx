import { type ReactNode, useEffect, useState } from "react";
import type { ProjectHandle } from "../../store/index.ts";
import { Notice } from "./notice.tsx";
import { hrefOf } from "./route.ts";
import { ProjectContext, useFrameWords, useStore } from "./surroundings.ts";

/** Opens a project for what stands inside, and lets go of it afterwards. Nothing is said while it opens at once. */
export function ProjectDoor({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  const words = useFrameWords();
  const project = useOpenProject(id);
  if (project === undefined) return <p className="patience">{words.opening}</p>;
  if (project === null)
    return (
      <Notice title={words.noSuchProject} text={words.noSuchProjectWhat}>
        <a className="button next" href={hrefOf({ screen: "projects" })}>
          {words.toProjects}
        </a>
      </Notice>
    );
  return <ProjectContext value={project}>{children}</ProjectContext>;
}

/** `undefined`: still opening; `null`: there is none. */
function useOpenProject(id: string): ProjectHandle | null | undefined {
  const store = useStore();
  const [opened, setOpened] = useState<{ readonly id: string; readonly project: ProjectHandle | null }>();
  useEffect(() => {
    let here = true;
    void store.open(id).then((project) => here && setOpened({ id, project }));
    return () => {
      here = false;
    };
  }, [store, id]);
  return opened?.id === id ? opened.project : undefined;
}
