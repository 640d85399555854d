import type { Lab } from "../engine/cloth/index.ts";
import { type SpokenColour, spokenColour, type Tone } from "../words/index.ts";

const tones: { readonly [T in Tone]: string } = { light: "hell", medium: "", dark: "dunkel" };

const names: { readonly [N in SpokenColour["name"]]: string } = {
  white: "fast weiß",
  black: "fast schwarz",
  grey: "grau",
  red: "rot",
  orange: "orange",
  yellow: "gelb",
  green: "grün",
  teal: "petrol",
  blue: "blau",
  violet: "violett",
  pink: "rosa",
  brown: "braun",
  rust: "rostrot",
  cream: "creme",
  tan: "beige",
};

/** What a colour would be called across a table: "dunkelblau", "creme", "braun". */
export function colourName(lab: Lab): string {
  const { tone, name } = spokenColour(lab);
  return `${tones[tone]}${names[name]}`;
}
