import { everyPlanKeepsEveryLaw } from "./everyPlan.ts";
import { heaps, worked } from "./heaps.ts";

// Plans of the others are held to the laws where they are made once for the rules too.
everyPlanKeepsEveryLaw(
  "weekend",
  heaps.filter((heap) => !worked.includes(heap)),
);
