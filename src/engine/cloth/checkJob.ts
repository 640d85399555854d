import { add, type Length, length, roundUpTo, type Size, subtract, times } from "../length/index.ts";
import { readColour } from "./colour.ts";
import {
  defaultSettings,
  extraLimits,
  largestBack,
  mostPieces,
  type Settings,
  settingLimits,
  smallestCell,
} from "./defaults.ts";
import type { Draft } from "./draft.ts";
import type { DraftProblem } from "./problems.ts";

const sides = ["width", "height"] as const;
const settingFields = ["step", "seam", "plainSeam", "floor", "clothWidth"] as const;

/** What she set, and the defaults of her unit for the rest. */
export function settingsOf(draft: Draft): Settings {
  const usual = defaultSettings[draft.unit];
  return {
    step: draft.step ?? usual.step,
    seam: draft.seam ?? usual.seam,
    plainSeam: draft.plainSeam ?? usual.plainSeam,
    floor: draft.floor ?? usual.floor,
    clothWidth: draft.clothWidth ?? usual.clothWidth,
  };
}

/** Everything that is wrong or worth knowing about the job around its pieces. */
export function jobProblems(draft: Draft): DraftProblem[] {
  const settings = settingsOf(draft);
  const wrongSettings = settingProblems(settings);
  const back = wrongSettings.length === 0 ? backProblems(draft.back, settings) : bareBackProblems(draft.back);
  return [...back, ...topProblems(draft), ...wrongSettings, ...plainProblems(draft), ...heapProblems(draft)];
}

/**
 * The back, so that the layout inside its outer seams ends on a mark of the ruler: made up to the next one where it
 * does not. Up, since a back is never too large; said by a note, never done unseen.
 */
export function backOnStep(back: Size, { seam, step }: Settings): Size {
  const seams = times(seam, 2);
  const made = (side: Length) => add(roundUpTo(subtract(side, seams), step), seams);
  return { width: made(back.width), height: made(back.height) };
}

function settingProblems(settings: Settings): DraftProblem[] {
  return settingFields.flatMap((field) => {
    const size = settings[field];
    const { least, most } = settingLimits[field];
    if (size >= least && size <= most) return [];
    return [{ kind: "out-of-range", severity: "stop", row: null, field, size, least, most }];
  });
}

function backProblems(back: Size, settings: Settings): DraftProblem[] {
  const bare = bareBackProblems(back);
  if (bare.length > 0) return bare;
  const least = add(smallestCell(settings.floor), times(settings.seam, 2));
  const made = backOnStep(back, settings);
  return sides.flatMap((side): DraftProblem[] => {
    const at = { row: null, field: "back", side, size: back[side] } as const;
    if (back[side] < least) return [{ kind: "back-too-small", severity: "stop", ...at, least }];
    if (made[side] === back[side]) return [];
    return [{ kind: "back-off-step", severity: "note", ...at, made: made[side], step: settings.step }];
  });
}

function bareBackProblems(back: Size): DraftProblem[] {
  return sides.flatMap((side): DraftProblem[] => {
    const at = { severity: "stop", row: null, field: "back", side } as const;
    const size = back[side];
    if (size <= 0) return [{ kind: "back-zero", ...at }];
    return size <= largestBack ? [] : [{ kind: "back-too-large", ...at, size, most: largestBack }];
  });
}

function topProblems({ top, back }: Draft): DraftProblem[] {
  if (!top) return [];
  const { extra } = top;
  const { least, most } = extraLimits;
  const extraFits = extra >= least && extra <= most;
  const ofSides = sides.flatMap((side) => topSideProblems({ side, top: top[side], back: back[side], extra }));
  if (extraFits) return ofSides;
  const range = { size: extra, least, most };
  return [...ofSides, { kind: "extra-out-of-range", severity: "stop", row: null, field: "top", ...range }];
}

type TopSide = { side: "width" | "height"; top: Length; back: Length; extra: Length };

function topSideProblems({ side, top, back, extra }: TopSide): DraftProblem[] {
  if (top <= 0) return [{ kind: "top-zero", severity: "stop", row: null, field: "top", side }];
  if (top > back) {
    return [{ kind: "top-larger-than-back", severity: "stop", row: null, field: "top", side, top, back }];
  }
  const wanted = length(top + 2 * extra);
  if (back >= wanted) return [];
  return [{ kind: "back-short-of-extra", severity: "note", row: null, field: "back", side, back, wanted }];
}

function plainProblems({ plain }: Draft): DraftProblem[] {
  const colour = plain.colour?.trim() ?? "";
  if (colour === "" || readColour(colour)) return [];
  return [{ kind: "unknown-plain-colour", severity: "stop", row: null, field: "plain", colour }];
}

function heapProblems({ pieces }: Draft): DraftProblem[] {
  const at = { severity: "stop", row: null, field: "pieces" } as const;
  if (!pieces.some(({ use }) => use !== "keep-back" && use !== "give-away"))
    return [{ kind: "nothing-to-plan", ...at }];
  // Counts that are wrong by themselves are named in their own rows.
  const counts = pieces.map(({ count = 1 }) => (count >= 1 && count <= mostPieces ? count : 0));
  const total = counts.reduce((all, count) => all + count, 0);
  return total <= mostPieces ? [] : [{ kind: "too-many-pieces", ...at, total, most: mostPieces }];
}
