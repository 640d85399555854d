import { everyPlanKeepsEveryLaw } from "./everyPlan.ts";

everyPlanKeepsEveryLaw("weekend");
