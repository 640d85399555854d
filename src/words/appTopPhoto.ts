/** What is said of the photo of the finished top. */
import type { Lab } from "../engine/cloth/index.ts";
import type { DisplayUnit } from "../engine/length/index.ts";
import type { PhotoRefusal } from "../photo/index.ts";
import { refusalText } from "./appPhoto.ts";
import { colourName } from "./english/colours.ts";
import type { Locale } from "./locales.ts";
import { sentence, type Voice } from "./voice.ts";
import { inWordSet } from "./wordSet.ts";

type CornerNames = readonly [string, string, string, string];

export type TopPhotoTexts = {
  readonly title: string;
  readonly what: string;
  readonly take: string;
  readonly choose: string;
  readonly another: string;
  readonly remove: string;
  readonly opening: string;
  readonly refused: (why: PhotoRefusal) => string;
  readonly failed: string;

  // Its corners.
  readonly marking: string;
  readonly how: string;
  readonly corners: CornerNames;
  readonly straighten: string;
  readonly straightening: string;
  readonly notCorners: string;
  readonly leaveIt: string;

  // Once it is there.
  readonly added: string;
  readonly removed: string;
  readonly onDrawing: string;
  readonly palette: string;
  readonly paletteWhat: string;
  readonly colour: (lab: Lab, share: number) => string;
  readonly forPlain: (lab: Lab, share: number) => string;

  // Over the plan.
  readonly covering: string;
};

export function topPhotoTexts(locale: Locale, unit: DisplayUnit): TopPhotoTexts {
  return inWordSet(locale, unit, { name: "topPhoto", english });
}

function english(voice: Voice): TopPhotoTexts {
  const { colour, colours } = voice.trade;
  const named = (lab: Lab, share: number) => `${sentence(colourName(lab, voice))}, ${voice.percent(share)}`;
  return {
    title: "A photo of the top",
    what: "With a photo of the finished top you see it on its back, and how it lies over a plan. Lay or hang it flat, all of it in the photo. It stays on this device.",
    take: "Take a photo",
    choose: "Choose a photo of the top",
    another: "Choose another photo",
    remove: "Take the photo away",
    opening: "Opening the photo…",
    refused: (why) => refusalText(why, voice),
    failed: "The photo could not be opened. Nothing was changed. Try again.",

    marking: "Corners of the top",
    how: "Bring each mark to a corner of the top: drag it, tap beside it on the photo, or use the arrow keys (with Shift further).",
    corners: ["Upper left corner", "Upper right corner", "Lower right corner", "Lower left corner"],
    straighten: "These are its corners",
    straightening: "One moment…",
    notCorners: "Two corners have changed places, or three lie in a line. Bring each mark to its own corner.",
    leaveIt: "Leave it",

    added: "The top lies on the back in the drawing.",
    removed: "The photo is gone. Undo brings it back.",
    onDrawing: "The top as your photo shows it.",
    palette: `${sentence(colours)} of the top`,
    paletteWhat: `As the photo shows them; look at the cloth itself before you buy. Tap one to take it as the ${colour} of the plain cloth.`,
    colour: named,
    forPlain: (lab, share) => `${named(lab, share)}: take it for the plain cloth`,

    covering: "How much the top covers",
  };
}
