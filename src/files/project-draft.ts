import { backFor, extraFor } from "../engine/back/index.ts";
import {
  type CheckedDraft,
  checkDraft,
  type Draft,
  type DraftPiece,
  type DraftProblem,
  type Job,
  kindFromSides,
} from "../engine/cloth/index.ts";
import { inches, type Length, larger, length, type Size, subtract } from "../engine/length/index.ts";
import { type PutAside, putAside } from "../engine/supplies/index.ts";
import { crc32Text } from "./crc32.ts";
import { pieceOf } from "./project-rows.ts";
import type { Measured, Project, ProjectSettings, RoughStock, ThreeMeasures } from "./project-types.ts";

/** What the size page works out. `null`: not enough is measured yet. */
export type WorkedOutSize = {
  /** The largest of the three measures each way. */
  readonly top: Size | null;
  readonly extra: Length;
  /** Edge to edge. */
  readonly back: Size | null;
};

/** The sizes of a project: what her quilter asks for goes before her own extra, and that before the method's. */
export function sizeOfProject({ size, settings }: Project): WorkedOutSize {
  const extra = size.asksExtra?.value ?? size.extra?.value ?? extraFor(size.method, settings.unit);
  const top = bothSides(largestOf(size.topWidths), largestOf(size.topHeights));
  const fromTop = top === null || size.from === "back" ? null : backFor(top, extra);
  const back = bothSides(
    size.backWidth?.value ?? atLeast(fromTop?.width, size.asksWidth),
    size.backHeight?.value ?? atLeast(fromTop?.height, size.asksHeight),
  );
  return { top: size.from === "top" ? top : null, extra, back };
}

function largestOf(measures: ThreeMeasures): Length | null {
  const lengths = measures.flatMap((measure) => measure?.value ?? []);
  return lengths.reduce<Length | null>((most, next) => (most === null ? next : larger(most, next)), null);
}

function bothSides(width: Length | null, height: Length | null): Size | null {
  return width === null || height === null ? null : { width, height };
}

function atLeast(size: Length | undefined, asked: Measured<Length> | null): Length | null {
  if (size === undefined) return null;
  return asked === null || asked.value === null ? size : larger(size, asked.value);
}

/**
 * The draft of a project, for `checkDraft`. Rows that wait to be mended stay out. `row` is the place in
 * `leftovers`, from 1; rough stock goes on counting behind them.
 */
export function draftOfProject(project: Project): Draft {
  const { size, settings, time, plain } = project;
  const { top, extra, back } = sizeOfProject(project);
  return {
    unit: settings.unit,
    ...settingsGiven(settings),
    ...(top === null ? {} : { top: { ...top, method: size.method, extra } }),
    back: back ?? { width: length(0), height: length(0) },
    time,
    wishes: project.wishes.asked,
    ...(project.wishes.contrast === null ? {} : { contrast: project.wishes.contrast }),
    plain: { name: plain.name, ...(plain.colour === "" ? {} : { colour: plain.colour }) },
    pieces: asideOfProject(project).pieces,
  };
}

/** What binding and label take out of the heap first, where she wants that, and the heap without it. */
export function asideOfProject(project: Project): PutAside {
  const { reserveBinding, reserveLabel } = project.heap;
  const binding = reserveBinding ? sizeOfProject(project).top : null;
  return putAside([...listedPieces(project), ...roughPieces(project)], { binding, label: reserveLabel });
}

const lengthSettings = ["step", "seam", "plainSeam", "floor", "clothWidth"] as const;

function settingsGiven(settings: ProjectSettings): Partial<Draft> {
  const given = lengthSettings.flatMap((name) => {
    const value = settings[name]?.value ?? null;
    return value === null ? [] : [[name, value] as const];
  });
  return Object.fromEntries(given);
}

function listedPieces({ leftovers, heap }: Project): readonly DraftPiece[] {
  return leftovers.flatMap((leftover, index) => {
    const piece = pieceOf(leftover, index + 1);
    if (piece === null) return [];
    return [heap.cutting === "rough" ? trimmed(piece) : piece];
  });
}

/** What scissors and tearing cost along each edge before a piece is straight. From memory: a seam's half. */
export const roughEdge = inches(1, 8);

/** A roughly cut piece as it is once its edges are straight. What was sewn, or is a length, was cut straight before. */
function trimmed(piece: DraftPiece): DraftPiece {
  const { width, height } = piece;
  if (width === undefined || height === undefined) return piece;
  const kind = piece.kind ?? kindFromSides(width, height);
  switch (kind) {
    case "strip":
    case "square":
    case "rectangle":
    case "odd":
      return { ...piece, width: withoutEdges(width), height: withoutEdges(height) };
    case "triangle":
      return { ...piece, ...smallerTriangle({ width, height }) };
    case "block":
    case "part-block":
    case "half-square-triangle":
    case "length":
    case "crumbs":
      return piece;
  }
}

function withoutEdges(side: Length): Length {
  return larger(subtract(side, roughEdge, roughEdge), length(1));
}

// Moved in by the same on all three sides, a triangle shrinks about its incircle.
function smallerTriangle({ width, height }: Size): Size {
  const incircle = (width + height - Math.hypot(width, height)) / 2;
  const scale = Math.max(0, incircle - roughEdge) / incircle;
  const leg = (side: Length) => length(Math.max(1, Math.floor(side * scale)));
  return { width: leg(width), height: leg(height) };
}

/** Nobody knows how long the strips of a rough heap are. Half a width of cloth is a length most of them have. */
export const roughStripLength = inches(20);

function roughPieces({ rough, leftovers }: Project): readonly DraftPiece[] {
  return rough.flatMap((stock, index) => roughPiece(stock, leftovers.length + index + 1));
}

function roughPiece(stock: RoughStock, row: number): readonly DraftPiece[] {
  const cloth = {
    row,
    ...(stock.fabric === "" ? {} : { fabric: stock.fabric }),
    ...(stock.colour === "" ? {} : { colour: stock.colour }),
  };
  if (stock.kind === "bag") {
    const weight = stock.weight.value;
    return weight === null ? [] : [{ ...cloth, kind: "crumbs", weight }];
  }
  const [width, total] = [stock.width.value, stock.total.value];
  if (width === null || total === null) return [];
  return roughStrips(total).map(({ height, count }) => ({ ...cloth, kind: "strip", width, height, count }));
}

/** "About 9 yd" may be a tenth less, as with weighed cloth. */
function roughStrips(total: Length): readonly { readonly height: Length; readonly count: number }[] {
  const sure = Math.floor((total * 9) / 10);
  const count = Math.floor(sure / roughStripLength);
  if (count > 0) return [{ height: roughStripLength, count }];
  return sure > 0 ? [{ height: length(sure), count: 1 }] : [];
}

export type CheckedProject = {
  /** `null`: something must be given or mended first. */
  readonly job: Job | null;
  /** What keeps rows out (`row` not null) or keeps the job from being made. */
  readonly stops: readonly DraftProblem[];
  readonly notes: readonly DraftProblem[];
  /** Ids of the leftovers that are not in the job: they wait to be mended. */
  readonly waiting: readonly string[];
};

/** The job of a project: good rows enter, bad ones wait. */
export function checkProject(project: Project): CheckedProject {
  const { checked, stops } = withoutBadRows(draftOfProject(project));
  const bad = new Set(stops.map(({ row }) => row));
  const waiting = project.leftovers.filter((leftover, index) => {
    return bad.has(index + 1) || pieceOf(leftover, index + 1) === null;
  });
  return {
    job: checked?.job ?? null,
    stops,
    notes: checked?.notes ?? [],
    waiting: waiting.map(({ id }) => id),
  };
}

type Checked = { readonly checked: CheckedDraft | null; readonly stops: readonly DraftProblem[] };

function withoutBadRows(draft: Draft): Checked {
  const check = checkDraft(draft);
  if (check.ok) return { checked: check.value, stops: [] };
  const stops = check.error.filter(({ severity }) => severity === "stop");
  const rows = new Set(stops.flatMap(({ row }) => row ?? []));
  if (rows.size === 0) return { checked: null, stops };
  const again = withoutBadRows({ ...draft, pieces: draft.pieces.filter(({ row }) => !rows.has(row)) });
  const ofRows = stops.filter(({ row }) => row !== null);
  return { checked: again.checked, stops: [...ofRows, ...again.stops] };
}

/** Tells whether a job is still the one a plan was made for. What she wishes of plans is no part of it. */
export function hashOfJob({ wishes, contrast, ...job }: Job): string {
  const text = JSON.stringify(inOrder(job));
  return `${crc32Text(new TextEncoder().encode(text))}-${text.length.toString(36)}`;
}

/** The same value gives the same text, in whatever order its fields were set. */
function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== "object" || value === null) return value;
  const fields = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return fields.map(([name, field]) => [name, inOrder(field)]);
}
