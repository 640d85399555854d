import { useCallback, useEffect, useState } from "react";
import { type PlanDocument, readPlan } from "../../../files/index.ts";
import type { ProjectHandle, ProjectVersion } from "../../../store/index.ts";
import { useProject } from "../../frame/index.ts";

/** A version of the back that she gave a name, and the plan that is kept in it; null: none. */
export type NamedPlan = {
  readonly id: string;
  readonly name: string;
  /** Milliseconds since 1970, UTC. */
  readonly at: number;
  readonly plan: PlanDocument | null;
};

// A version never changes, and its plan takes a while to read.
const known = new Map<string, PlanDocument | null>();

async function planOf(project: ProjectHandle, id: string): Promise<PlanDocument | null> {
  const before = known.get(id);
  if (before !== undefined) return before;
  const text = (await project.readVersion(id))?.plan?.text;
  const read = text === undefined ? null : readPlan(text);
  const plan = read?.ok ? read.value : null;
  known.set(id, plan);
  return plan;
}

/** Her named versions, the newest first. */
export async function namedPlansOf(project: ProjectHandle): Promise<readonly NamedPlan[]> {
  const versions = await project.versions();
  return await Promise.all(
    versions.filter(isNamed).map(async ({ id, name, at, planned }) => {
      return { id, name, at, plan: planned ? await planOf(project, id) : null };
    }),
  );
}

function isNamed(version: ProjectVersion): version is ProjectVersion & { readonly name: string } {
  return version.name !== null;
}

/** null: not read yet. */
export function useNamedPlans() {
  const project = useProject();
  const [named, setNamed] = useState<readonly NamedPlan[] | null>(null);
  const readAgain = useCallback(async () => setNamed(await namedPlansOf(project)), [project]);
  useEffect(() => void readAgain(), [readAgain]);
  return { named, readAgain };
}
