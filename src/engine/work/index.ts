export * from "./errors.ts";
export * from "./limits.ts";
export * from "./minutes.ts";
