/** Where in the app she is. It stands behind the # of the address, so that any place can serve the files. */
import { useSyncExternalStore } from "react";

/** The steps of the job, in its order: the pages that the bar leads to. */
export const stepNames = ["size", "leftovers", "plan", "sew"] as const;
export type StepName = (typeof stepNames)[number];

/**
 * `projects` is where one starts; the steps belong to one project, and so does `photo`, which is reached from the
 * leftovers; `settings` stands beside the job and is reached from everywhere.
 */
export const screenNames = ["projects", ...stepNames, "photo", "settings"] as const;
export type ScreenName = (typeof screenNames)[number];

export type Route =
  | { readonly screen: "projects" }
  | { readonly screen: "settings"; readonly project?: string }
  | { readonly screen: StepName | "photo"; readonly project: string };

const start: Route = { screen: "projects" };

export function isStep(name: ScreenName): name is StepName {
  return stepNames.some((step) => step === name);
}

/** `#/` for the start, `#/ID/plan` for a page of a project, `#/settings`. */
export function hrefOf(route: Route): string {
  if (route.screen === "projects") return "#/";
  return route.project === undefined
    ? `#/${route.screen}`
    : `#/${encodeURIComponent(route.project)}/${route.screen}`;
}

/** What the part of the address behind the # means; the start, for whatever it does not know. */
export function routeOf(hash: string): Route {
  if (hash === "#/settings") return { screen: "settings" };
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
