export { type Column, columns, type WordColumn } from "./leftovers-columns.ts";
export type { FileProblem, OtherFile, RowFault, RowProblem, TableProblem } from "./leftovers-problems.ts";
export * from "./plan-problems.ts";
