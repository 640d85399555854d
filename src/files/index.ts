export { crc32, crc32Text } from "./crc32.ts";
export {
  type Everything,
  isEverything,
  largestEverything,
  readEverything,
  writeEverything,
} from "./everything.ts";
export { type LeftoversTable, type OtherColumn, readLeftovers } from "./leftovers.ts";
export { type Column, columns, type WordColumn } from "./leftovers-columns.ts";
export type { FileProblem, OtherFile, RowFault, RowProblem, TableProblem } from "./leftovers-problems.ts";
export { asDraft, writeLeftovers } from "./leftovers-write.ts";
export { type LineHabit, longestLine, readLine } from "./line.ts";
export { colourWordIn } from "./line-colours.ts";
export * from "./line-types.ts";
export { lineFields, writeLine } from "./line-write.ts";
export {
  type DocumentFabric,
  type DocumentPiece,
  type DocumentTop,
  documentOf,
  type PlanDocument,
  planFormat,
  planVersion,
} from "./plan-document.ts";
export * from "./plan-problems.ts";
export { largestPlanFile, readPlan, readPlans } from "./plan-read.ts";
export { writePlan, writePlans } from "./plan-write.ts";
export {
  largestPicture,
  largestProjectFile,
  type ProjectFile,
  readProject,
  readProjectFile,
  writeProject,
} from "./project.ts";
export { lengthMeasure, longestText, wellFormed } from "./project-codecs.ts";
export * from "./project-draft.ts";
export {
  leftoverParts,
  projectJson,
  readFact,
  readFacts,
  readProjectJson,
  sectionsOf,
  usualFacts,
  writeFacts,
} from "./project-json.ts";
export * from "./project-migrations.ts";
export { newProject } from "./project-new.ts";
export {
  type FactName,
  type Facts,
  factNames,
  factsOf,
  isFactName,
  mostOf,
  mostPhotos,
  projectOf,
  roughCodec,
} from "./project-parts.ts";
export * from "./project-problems.ts";
export { type ReadLeftover, readLeftoverParts, readPart } from "./project-read.ts";
export * from "./project-rows.ts";
export * from "./project-types.ts";
export { type DrawingWords, type SvgOptions, svgOfDrawing } from "./svg.ts";
export { type ThemeName, themeNames } from "./svg-colour.ts";
export * from "./table-as-rows.ts";
