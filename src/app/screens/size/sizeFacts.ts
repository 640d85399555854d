import {
  backingYardage,
  type CutOffEdge,
  cutOffEdge,
  extraFor,
  extraWide,
  shopStep,
  usualExtraWide,
} from "../../../engine/back/index.ts";
import { checkDraft, type DraftProblem, defaultSettings, type Method } from "../../../engine/cloth/index.ts";
import type { Drawing } from "../../../engine/drawing/index.ts";
import { type Length, type Size, subtract } from "../../../engine/length/index.ts";
import { draftOfProject, type Project, sizeOfProject, type ThreeMeasures } from "../../../files/index.ts";
import type { OneCloth } from "../../../words/index.ts";
import { plainBackOf, plainColourOf } from "../../parts/drawing/plainBack.ts";

/** All that the page about the size says beside what she typed. `null`: not enough is measured. */
export type SizeFacts = {
  readonly top: Size | null;
  readonly back: Size | null;
  readonly edge: CutOffEdge | null;
  readonly drawing: Drawing | null;
  /** Of the cloth she would buy: `#rrggbb`. */
  readonly plainColour: string;
  /** What each method takes on each side. */
  readonly extras: Readonly<Record<Method, Length>>;
  readonly usualClothWidth: Length;
  /** By how much her measures of one side differ; null where they don't. */
  readonly differ: { readonly width: Length | null; readonly height: Length | null };
  readonly oneCloth: OneCloth | null;
  /** About the extra on each side. */
  readonly extraProblems: readonly DraftProblem[];
  /** About the back as a whole. */
  readonly backProblems: readonly DraftProblem[];
};

export function sizeFacts(project: Project): SizeFacts {
  const { size, settings } = project;
  const { top, back } = sizeOfProject(project);
  const problems = jobProblems(project);
  const fits = back !== null && top !== null && top.width <= back.width && top.height <= back.height;
  return {
    top,
    back,
    edge: fits
      ? cutOffEdge({
          top: { ...top, method: size.method, extra: extraFor(size.method, settings.unit) },
          back,
        })
      : null,
    drawing: plainBackOf(project),
    plainColour: plainColourOf(project),
    extras: {
      frame: extraFor("frame", settings.unit),
      machine: extraFor("machine", settings.unit),
      hand: extraFor("hand", settings.unit),
    },
    usualClothWidth: defaultSettings[settings.unit].clothWidth,
    differ: { width: differenceIn(size.topWidths), height: differenceIn(size.topHeights) },
    oneCloth: back === null ? null : oneClothFor(project, back),
    extraProblems: problems.filter(({ kind }) => kind === "extra-out-of-range"),
    backProblems: problems.filter(({ kind }) => kind !== "extra-out-of-range"),
  };
}

const ofThisPage: readonly DraftProblem["kind"][] = [
  "back-too-small",
  "back-too-large",
  "back-off-step",
  "top-larger-than-back",
  "back-short-of-extra",
  "extra-out-of-range",
  "out-of-range",
  "unknown-plain-colour",
];

// What is not measured yet is no mistake, and the leftovers have their own page.
function jobProblems(project: Project): readonly DraftProblem[] {
  if (sizeOfProject(project).back === null) return [];
  const check = checkDraft({ ...draftOfProject(project), pieces: [] });
  const problems = check.ok ? check.value.notes : check.error;
  return problems.filter(({ kind }) => ofThisPage.includes(kind));
}

function differenceIn(measures: ThreeMeasures): Length | null {
  const lengths = measures.flatMap((measure) => measure?.value ?? []).toSorted((one, other) => one - other);
  const [least, most] = [lengths[0], lengths.at(-1)];
  return least === undefined || most === undefined || least === most ? null : subtract(most, least);
}

function oneClothFor({ settings }: Project, back: Size): OneCloth | null {
  const usual = defaultSettings[settings.unit];
  const clothWidth = settings.clothWidth?.value ?? usual.clothWidth;
  const seam = settings.plainSeam?.value ?? usual.plainSeam;
  if (clothWidth <= 2 * seam) return null;
  const roundTo = shopStep(settings.unit);
  const wide = extraWide(back, roundTo);
  return {
    clothWidth,
    ...backingYardage(back, { clothWidth, seam, roundTo }),
    wide: wide === null ? null : { width: usualExtraWide, buy: wide.buy },
  };
}
