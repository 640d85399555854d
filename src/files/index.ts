export * from "./plan-problems.ts";
