import { checkDraft, type DraftPiece, type Job, type WishAsked } from "../../src/engine/cloth/index.ts";
import type { LayoutNode } from "../../src/engine/layout/index.ts";
import { finished, inches } from "../../src/engine/length/index.ts";

/** What one letter of a patchwork stands for: a fabric of that name with these facts. */
export type Patch = Pick<DraftPiece, "colour" | "washed" | "cloth" | "direction" | "use">;

export type Patchwork = { readonly job: Job; readonly layout: LayoutNode };

type Asked = { readonly wishes?: readonly WishAsked[]; readonly top?: number };

const cell = 4;

/**
 * Rows of letters, each a square of 4 in finished: `["ab", "ba"]` is a four-patch. Small letters are leftovers, the
 * fabric's name the letter; a `.` is plain cloth to buy. `top`: how many inches the top stays inside the back.
 */
export function patchwork(
  rows: readonly string[],
  patches: Readonly<Record<string, Patch>>,
  asked: Asked = {},
): Patchwork {
  const letters = Object.keys(patches).filter((letter) => letter !== ".");
  const width = inches(2 * cell * (rows[0]?.length ?? 0) + 1, 2);
  const height = inches(2 * cell * rows.length + 1, 2);
  const checked = checkDraft({
    unit: "in",
    back: { width, height },
    ...topOf(rows, asked.top),
    ...(asked.wishes === undefined ? {} : { wishes: asked.wishes }),
    plain: { name: "oat", ...(patches["."]?.colour === undefined ? {} : { colour: patches["."].colour }) },
    pieces: letters.map((letter, index) => ({
      row: index + 1,
      kind: "square",
      width: inches(9, 2),
      height: inches(9, 2),
      count: Math.max(1, [...rows.join("")].filter((other) => other === letter).length),
      fabric: letter,
      ...patches[letter],
    })),
  });
  if (!checked.ok) throw new Error(JSON.stringify(checked.error));
  const { job } = checked.value;
  return { job, layout: layoutOf(rows, letters, job) };
}

function topOf(rows: readonly string[], inset: number | undefined) {
  if (inset === undefined) return {};
  const width = inches(cell * (rows[0]?.length ?? 0) - 2 * inset);
  const height = inches(cell * rows.length - 2 * inset);
  return { top: { width, height, method: "machine", extra: inches(inset) } as const };
}

function layoutOf(rows: readonly string[], letters: readonly string[], { seam }: Job): LayoutNode {
  const side = finished(inches(cell));
  const size = { width: side, height: side };
  const leafOf = (letter: string): LayoutNode =>
    letter === "."
      ? { kind: "cloth", role: "plain", fabric: "plain", source: "buy", ...size }
      : { kind: "piece", piece: `square-${letters.indexOf(letter) + 1}`, turned: false, ...size };
  const width = finished(inches(cell * (rows[0]?.length ?? 0)));
  const parts = rows.map(
    (row): LayoutNode => ({
      kind: "join",
      direction: "beside",
      seam,
      width,
      height: side,
      parts: [...row].map(leafOf),
    }),
  );
  const height = finished(inches(cell * rows.length));
  return { kind: "join", direction: "below", seam, width, height, parts };
}
