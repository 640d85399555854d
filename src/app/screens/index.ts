import type { Screen } from "../frame/screen.ts";

/** The pages that are built: the steps in the order of the job, then what is reached from one of them. */
export const screens: readonly Screen[] = [
  { name: "projects", load: () => import("./projects/projects.tsx") },
  { name: "size", load: () => import("./size/size.tsx") },
  { name: "leftovers", load: () => import("./leftovers/leftovers.tsx") },
  { name: "plan", load: () => import("./plan/plan.tsx") },
  { name: "sew", load: () => import("./sew/sew.tsx") },
  { name: "photo", load: () => import("./photo/photo.tsx") },
  { name: "settings", load: () => import("./settings/settings.tsx") },
];
