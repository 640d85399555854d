import { beside } from "../../worker/index.ts";
import { type Desk, openDesk } from "./desk.ts";
import type { Planning } from "./planning.ts";

// Coming back from another page everything lies as she left it. One job at a time is remembered.
let last: { readonly key: string; readonly desk: Desk } | null = null;

/** The desk for a job: the same one as long as the job is. */
export function deskFor({ key, job }: Planning & { readonly kind: "ready" }): Desk {
  if (last?.key !== key) last = { key, desk: openDesk(job, beside) };
  return last.desk;
}
