import { everyPlanKeepsEveryLaw } from "./everyPlan.ts";

everyPlanKeepsEveryLaw("afternoon");
