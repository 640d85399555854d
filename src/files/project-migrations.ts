import { assert } from "../engine/length/index.ts";
import type { Json } from "./project-codecs.ts";

export const projectFormat = "verso-project";
/** Goes up by one with every change that an earlier Verso could not read; each step has a migration and its test. */
export const projectVersion = 1;

export type JsonObject = { readonly [key: string]: Json };

/** Brings `project.json` (the kept plan's text in `plan.text`) from version `from` to the next. Never throws. */
export type Migration = { readonly from: number; readonly migrate: (project: JsonObject) => JsonObject };

/** In order, one per version since the first. */
export const migrations: readonly Migration[] = [];

/** A project of an earlier version as one of `to`. The migrations begin at the first version and leave out none. */
export function migrated(
  project: JsonObject,
  from: number,
  to: number = projectVersion,
  steps: readonly Migration[] = migrations,
): JsonObject {
  let now = project;
  for (let version = from; version < to; version++) {
    const step = steps.find((migration) => migration.from === version);
    assert(step !== undefined, `every earlier version can be read, ${version} too`);
    now = { ...step.migrate(now), version: version + 1 };
  }
  return now;
}
