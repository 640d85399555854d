export * from "./arithmetic.ts";
export { isMonthName } from "./dates.ts";
export * from "./format.ts";
export { longestLength, parseArea, parseLength, parseSizePair, parseWeight } from "./parse.ts";
export * from "./problems.ts";
export * from "./result.ts";
export * from "./types.ts";
