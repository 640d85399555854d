import type { Job } from "../cloth/index.ts";
import { contrastAdvice } from "./contrast.ts";
import { cutOffAdvice, stripesAdvice, uprightAdvice } from "./direction.ts";
import { sidewaysAdvice } from "./rollers.ts";
import { type Scene, sceneOf } from "./scene.ts";
import { seamShadows, shadowsUnderTop } from "./showThrough.ts";
import type { Advice, AdvisedPlan } from "./types.ts";
import { bleedingAdvice, unwashedAdvice } from "./washing.ts";
import { weightsAdvice } from "./weights.ts";

/** In the order in which one meets them: before the shop, before the cutter, at the iron, on the table, at the frame. */
const advisers: readonly ((scene: Scene) => readonly Advice[])[] = [
  contrastAdvice,
  bleedingAdvice,
  unwashedAdvice,
  weightsAdvice,
  seamShadows,
  shadowsUnderTop,
  uprightAdvice,
  stripesAdvice,
  cutOffAdvice,
  sidewaysAdvice,
];

/**
 * What is worth knowing before a plan is sewn, each kind once, with the leftovers and steps where it matters. The
 * same plan and job give the same advice; a plan with nothing the matter gives none. `plan` is made for `job`.
 */
export function adviceFor(plan: AdvisedPlan, job: Job): readonly Advice[] {
  const scene = sceneOf(plan, job);
  return advisers.flatMap((adviser) => adviser(scene));
}
