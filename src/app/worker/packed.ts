import type { Plan } from "../../engine/plan/index.ts";

/** A plan as it goes from worker to worker: the page hands it on, and opens it only to show it. */
export type PackedPlan = { readonly bytes: Uint8Array<ArrayBuffer> };

export function pack(plan: Plan): PackedPlan {
  return { bytes: new TextEncoder().encode(JSON.stringify(plan)) };
}

/** The plan that was packed. What is packed comes from our own worker, where it was checked. */
export function unpack({ bytes }: PackedPlan): Plan {
  return JSON.parse(new TextDecoder().decode(bytes));
}
