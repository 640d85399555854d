import { type ReactNode, useEffect, useState } from "react";
import type { ProjectHandle } from "../../store/index.ts";
import { Notice } from "./notice.tsx";
import { hrefOf } from "./route.ts";
import { Surface } from "./surface.tsx";
import { ProjectContext, useFrameWords, useStore } from "./surroundings.ts";

/** Opens a project for what stands inside; says so where there is none. */
export function ProjectDoor({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  const project = useOpenProject(id);
  if (project === undefined) return <Opening />;
  if (project === null) return <NoSuchProject />;
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

/**
 * `undefined`: still opening; `null`: there is none. It stays open when she goes to another page: coming back, she can
 * undo what she did before.
 */
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
