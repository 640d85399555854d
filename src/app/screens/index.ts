import type { Screen } from "../frame/screen.ts";

/** The pages that are built, in the order of the job. The frame shows these and no others. */
export const screens: readonly Screen[] = [
  { name: "projects", load: () => import("./projects/projects.tsx") },
  { name: "size", load: () => import("./size/size.tsx") },
  { name: "leftovers", load: () => import("./leftovers/leftovers.tsx") },
  { name: "plan", load: () => import("./plan/plan.tsx") },
  { name: "sew", load: () => import("./sew/sew.tsx") },
];
