import { asideOfProject, type Project, sizeOfProject } from "../../../files/index.ts";
import type { Reserved } from "../../../words/index.ts";

/** What is put aside for binding and label, to be told; null where she doesn't want it. */
export function reservedOf(project: Project): {
  readonly binding: Reserved | null;
  readonly label: Reserved | null;
} {
  const { reserveBinding, reserveLabel } = project.heap;
  const { binding, label } = asideOfProject(project);
  const isSized = sizeOfProject(project).top !== null;
  return {
    binding: reserveBinding
      ? {
          what: "binding",
          needed: isSized && binding !== null ? { width: binding.stripWidth, length: binding.needed } : null,
          from: binding?.from ?? [],
          short: binding?.short ?? null,
        }
      : null,
    label: reserveLabel ? { what: "label", needed: null, from: label?.from ?? [], short: null } : null,
  };
}
