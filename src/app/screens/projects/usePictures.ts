import { useEffect, useState } from "react";
import type { ProjectSummary, Store } from "../../../store/index.ts";
import { useStore } from "../../frame/index.ts";
import { type Picture, pictureOf } from "./stage.ts";

/** By project, with when it was changed last. */
const known = new Map<string, { readonly changedAt: number; readonly picture: Picture }>();

function knownPicture({ id, changedAt }: ProjectSummary): Picture | null {
  const taken = known.get(id);
  return taken?.changedAt === changedAt ? taken.picture : null;
}

/** Pictures of the projects in the list, one after the other, as each is read. */
export function usePictures(
  projects: readonly ProjectSummary[],
): (project: ProjectSummary) => Picture | null {
  const store = useStore();
  const [, setCount] = useState(0);
  useEffect(() => {
    let here = true;
    const take = async () => {
      for (const project of projects) {
        if (!here) return;
        if (knownPicture(project) !== null) continue;
        await takePicture(store, project);
        setCount((count) => count + 1);
      }
    };
    void take();
    return () => {
      here = false;
    };
  }, [store, projects]);
  // Until the new one is taken the old one stays, so that nothing blinks.
  return ({ id }) => known.get(id)?.picture ?? null;
}

async function takePicture(store: Store, project: ProjectSummary): Promise<void> {
  const handle = await store.open(project.id);
  if (handle === null) return;
  known.set(project.id, {
    changedAt: project.changedAt,
    picture: pictureOf(handle.state().project),
  });
  await handle.close();
}
