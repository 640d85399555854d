/** Where in the app she is. It stands behind the # of the address, so that any place can serve the files. */
import { useSyncExternalStore } from "react";

/** The pages, in the order of the job. `projects` is where one starts; the others belong to one project. */
export const screenNames = ["projects", "size", "leftovers", "plan", "sew"] as const;
export type ScreenName = (typeof screenNames)[number];
export type StepName = Exclude<ScreenName, "projects">;

export type Route = { readonly screen: "projects" } | { readonly screen: StepName; readonly project: string };

const start: Route = { screen: "projects" };

/** `#/` for the start, `#/ID/plan` for a page of a project. */
export function hrefOf(route: Route): string {
  return route.screen === "projects" ? "#/" : `#/${encodeURIComponent(route.project)}/${route.screen}`;
}

/** What the part of the address behind the # means; the start, for whatever it does not know. */
export function routeOf(hash: string): Route {
  const match = /^#\/([^/]+)\/([a-z]+)$/.exec(hash);
  const screen = screenNames.find((name) => name === match?.[2]);
  if (match?.[1] === undefined || screen === undefined || screen === "projects") return start;
  const project = decoded(match[1]);
  return project === null ? start : { screen, project };
}

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

/** Goes to a page, with the way back kept. */
export function go(route: Route): void {
  location.hash = hrefOf(route);
}

/** Where she is; the component is drawn anew when that changes. */
export function useRoute(): Route {
  return routeOf(useSyncExternalStore(listen, currentHash));
}

function listen(changed: () => void): () => void {
  addEventListener("hashchange", changed);
  return () => removeEventListener("hashchange", changed);
}

function currentHash(): string {
  return location.hash;
}
