export { openStore } from "./open-store.ts";
export * from "./types.ts";
