import { assert, cut, err, ok, type Result } from "../length/index.ts";
import { backOnStep, jobProblems, settingsOf } from "./checkJob.ts";
import { kindOf, pieceProblems } from "./checkPiece.ts";
import { areaOfWeight } from "./crumbs.ts";
import { defaultTime, grainOf } from "./defaults.ts";
import type { Draft, DraftPiece } from "./draft.ts";
import { plainId, sortFabrics } from "./fabrics.ts";
import { plainFabric } from "./plain.ts";
import type { DraftProblem } from "./problems.ts";
import { keepOf } from "./shape.ts";
import type { Job, Kind, Piece } from "./types.ts";

export type CheckedDraft = { readonly job: Job; readonly notes: readonly DraftProblem[] };

/**
 * The one door: a job whose every number can be worked with, and the notes she should read; or ALL problems at once,
 * stops and notes, the table's rows first in their order. Nothing is dropped or clamped: what is given stays as it is
 * (pieces are not even brought to the ruler's step here), what is missing takes a default. The one number that may
 * change is the back, made up to the ruler's step with a note.
 */
export function checkDraft(draft: Draft): Result<CheckedDraft, readonly DraftProblem[]> {
  const { seam } = settingsOf(draft);
  const book = sortFabrics(draft.pieces);
  const ofPieces = draft.pieces.flatMap((piece) => pieceProblems(piece, seam));
  const ofRows = [...ofPieces, ...book.problems].sort((a, b) => (a.row ?? 0) - (b.row ?? 0));
  const problems = [...ofRows, ...jobProblems(draft)];
  if (problems.some(({ severity }) => severity === "stop")) return err(problems);
  return ok({ job: jobOf(draft, book), notes: problems });
}

function jobOf(draft: Draft, book: ReturnType<typeof sortFabrics>): Job {
  const settings = settingsOf(draft);
  const pieces = checkedPieces(draft.pieces, book.ids);
  const plain = plainFabric(draft, pieces, book.fabrics);
  assert(plain !== null, "the plain cloth has a colour that was checked");
  return {
    unit: draft.unit,
    ...settings,
    top: draft.top ?? null,
    back: backOnStep(draft.back, settings),
    time: draft.time ?? defaultTime,
    ...wishedOf(draft),
    plain: plainId,
    fabrics: [...book.fabrics, plain],
    pieces,
  };
}

/** What she says of contrast goes before the wish for more of it. */
function wishedOf({ wishes = [], contrast }: Draft): Pick<Job, "wishes" | "contrast"> {
  const usual = wishes.includes("more-contrast") ? "strong" : "mixed";
  const others = wishes.filter((wish) => wish !== "more-contrast");
  return { wishes: [...new Set(others)], contrast: contrast ?? usual };
}

function checkedPieces(drafts: readonly DraftPiece[], fabrics: readonly string[]): Piece[] {
  const numbers = new Map<Kind, number>();
  return drafts.map((draft, index) => {
    const kind = kindOf(draft);
    const fabric = fabrics[index];
    assert(kind !== null && fabric !== undefined, "a checked piece has a kind and a fabric");
    const number = (numbers.get(kind) ?? 0) + 1;
    numbers.set(kind, number);
    return checkedPiece(draft, kind, { id: `${kind}-${number}`, fabric });
  });
}

function checkedPiece(draft: DraftPiece, kind: Kind, named: { id: string; fabric: string }): Piece {
  const facts = {
    ...named,
    count: draft.count ?? 1,
    keep: draft.keep ?? keepOf(kind),
    use: draft.use ?? "yes",
    direction: draft.direction ?? "none",
    grain: draft.grain ?? grainOf(kind),
    washed: draft.washed ?? null,
    cloth: draft.cloth?.trim() ?? "",
    name: draft.name?.trim() ?? "",
  } as const;
  if (kind === "crumbs")
    return { ...facts, kind, area: draft.area ?? areaOfWeight(draft.weight ?? 0).likely };
  const { width, height } = draft;
  assert(width !== undefined && height !== undefined, "a checked piece has both sides");
  return { ...facts, kind, width: cut(width), height: cut(height) };
}
