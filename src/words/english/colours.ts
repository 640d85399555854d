import type { Lab } from "../../engine/cloth/index.ts";
import { spokenColour, type Tone } from "../spokenColour.ts";
import type { Voice } from "../voice.ts";

const tones: { readonly [T in Tone]: string } = { light: "light ", medium: "", dark: "dark " };

/** What a colour would be called across a table: "dark blue", "cream", "brown". */
export function colourName(lab: Lab, { trade }: Voice): string {
  const { tone, name } = spokenColour(lab);
  if (name === "white" || name === "black") return `near ${name}`;
  return `${tones[tone]}${name === "grey" ? trade.grey : name}`;
}
