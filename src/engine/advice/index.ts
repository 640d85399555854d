export * from "./adviceFor.ts";
export * from "./types.ts";
