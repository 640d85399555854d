import type { Screen } from "../frame/screen.ts";

/** The pages that are built, in the order of the job. The frame shows these and no others. */
export const screens: readonly Screen[] = [{ name: "size", load: () => import("./size/size.tsx") }];
