import { chromaOf, type Hue, hueOf } from "../engine/advice/index.ts";
import type { Lab } from "../engine/cloth/index.ts";

// L* from which on a colour is called light, up to which dark; nearly white, nearly black. Ours: no common practice.
const lightFrom = 70;
const darkTo = 35;
const whiteFrom = 88;
const blackTo = 18;
// Up to this L* yellow and orange are browns; from this a* on a brown is a rust.
const brownTo = 55;
const rustFrom = 22;
/** Chroma under which yellow and orange are called cream. */
const creamTo = 30;

export type Tone = "light" | "medium" | "dark";

/** What a colour would be called across a table, in no language yet. */
export type SpokenColour = {
  readonly tone: Tone;
  readonly name: Hue | "white" | "black" | "brown" | "rust" | "cream" | "tan";
};

export function spokenColour(lab: Lab): SpokenColour {
  const hue = hueOf(lab);
  const tone = toneOf(lab);
  if (hue === "grey") return greyOf(lab);
  if (hue === "orange" || hue === "yellow") return earthOf(lab, hue);
  if (hue === "red" && tone === "light") return { tone, name: "pink" };
  return { tone, name: hue === "violet" && isBlue(lab) ? "blue" : hue };
}

/** In CIELAB the blues of strong color lean towards violet; those are still called blue. */
function isBlue({ a, b }: Lab): boolean {
  return a < 0.7 * -b;
}

function greyOf(lab: Lab): SpokenColour {
  if (lab.l >= whiteFrom) return { tone: "medium", name: "white" };
  return lab.l <= blackTo ? { tone: "medium", name: "black" } : { tone: toneOf(lab), name: "grey" };
}

/** Yellow and orange of cloth are brown where they are dark, cream where they are pale. */
function earthOf(lab: Lab, hue: Hue): SpokenColour {
  if (lab.l < brownTo && lab.l > darkTo) return { tone: "medium", name: lab.a > rustFrom ? "rust" : "brown" };
  if (lab.l <= darkTo) return { tone: "dark", name: "brown" };
  if (chromaOf(lab) < creamTo) return { tone: "medium", name: lab.l >= lightFrom ? "cream" : "tan" };
  return { tone: lab.l >= 80 ? "light" : "medium", name: hue };
}

function toneOf({ l }: Lab): Tone {
  if (l >= lightFrom) return "light";
  return l <= darkTo ? "dark" : "medium";
}
