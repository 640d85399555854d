import { hexOf, type Lab } from "../engine/cloth/index.ts";

export const themeNames = ["light", "dark"] as const;
export type ThemeName = (typeof themeNames)[number];

/** What stands round the cloth. Cloth keeps its own colour in every theme. */
export type Theme = {
  readonly ground: string;
  readonly ink: string;
  readonly quiet: string;
  readonly noColour: string;
};

export const themes: Readonly<Record<ThemeName, Theme>> = {
  // Unbleached cotton, and an ink with a breath of blue.
  light: { ground: "#f7f3ea", ink: "#1f242d", quiet: "#5c6069", noColour: "#d8d3c8" },
  dark: { ground: "#25221f", ink: "#ece7dc", quiet: "#b5aea2", noColour: "#6b665e" },
};

/** Lines over cloth come in pairs, a dark one on a light one, so that one of them shows on any print. */
export const overCloth = { dark: "#14171d", light: "#ffffff" } as const;

export function fillOf(lab: Lab | null, theme: Theme): string {
  return lab === null ? theme.noColour : hexOf(lab);
}
