import type { ComponentType } from "react";
import type { ScreenName } from "./route.ts";

/** One page of the app. Its code is fetched when it is first opened. */
export type Screen = {
  readonly name: ScreenName;
  readonly load: () => Promise<{ readonly default: ComponentType }>;
};
