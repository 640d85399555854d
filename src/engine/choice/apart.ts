import type { LayoutNode } from "../layout/index.ts";
import { inches } from "../length/index.ts";
import { type Seam, seamsOf } from "./seams.ts";

/** Seams nearer than this to one of another plan look like the same seam. */
const near = inches(1, 2);

/** Two backs look different when so much of the seams of each lies apart from all of the other's (issue: 40 %). */
export const leastApart = 0.4;

/** Whether nobody would take one for the other. */
export function lookDifferent(one: LayoutNode, other: LayoutNode): boolean {
  return apart(one, other) >= leastApart;
}

// The same plans are held beside one another again and again while a choice is being made.
const known = new WeakMap<LayoutNode, WeakMap<LayoutNode, number>>();

/** The lesser share of the two: how much of the seams of each lies more than ½ in from any seam of the other. */
export function apart(one: LayoutNode, other: LayoutNode): number {
  const before = known.get(one)?.get(other);
  if (before !== undefined) return before;
  const [a, b] = [seamsOf(one), seamsOf(other)];
  const share = Math.min(shareApart(a, b), shareApart(b, a));
  remember(one, other, share);
  remember(other, one, share);
  return share;
}

function remember(one: LayoutNode, other: LayoutNode, share: number): void {
  const row = known.get(one) ?? new WeakMap<LayoutNode, number>();
  known.set(one, row.set(other, share));
}

/** Share of the length of `seams` that lies more than ½ in from all of `others`, 0 to 1. Without seams nothing does. */
export function shareApart(seams: readonly Seam[], others: readonly Seam[]): number {
  const whole = seams.reduce((sum, { from, to }) => sum + to - from, 0);
  const ways = { across: inOrder(others, true), down: inOrder(others, false) };
  const far = seams.reduce((sum, seam) => sum + seam.to - seam.from - nearLength(seam, ways), 0);
  return whole === 0 ? 0 : far / whole;
}

/** Seams that run one way, by where they lie. */
type InOrder = readonly Seam[];
type BothWays = { readonly across: InOrder; readonly down: InOrder };

function inOrder(seams: readonly Seam[], across: boolean): InOrder {
  return seams.filter((seam) => seam.across === across).sort((one, other) => one.at - other.at);
}

/** How much of a seam lies within ½ in of one of the others. */
function nearLength(seam: Seam, { across, down }: BothWays): number {
  const [same, crossing] = seam.across ? [across, down] : [down, across];
  const spans = [
    ...nearSpans(seam, same, { from: seam.at, to: seam.at }),
    ...nearSpans(seam, crossing, seam),
  ];
  return unionLength(spans.sort((one, other) => one.from - other.from));
}

/** Only those that lie within ½ in of this stretch can be near. */
function nearSpans(seam: Seam, others: InOrder, { from, to }: Span): Span[] {
  const spans: Span[] = [];
  for (let at = firstFrom(others, from - near); at < others.length; at++) {
    const other = others[at];
    if (other === undefined || other.at > to + near) break;
    const span = nearSpan(seam, other);
    if (span !== null) spans.push(span);
  }
  return spans;
}

/** The first that lies there or beyond, by halving. */
function firstFrom(others: InOrder, place: number): number {
  let [low, high] = [0, others.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((others[middle]?.at ?? place) < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

type Span = { readonly from: number; readonly to: number };

/** The part of a seam within ½ in of the other: points whose distance to the nearest point of that seam is no more. */
function nearSpan(seam: Seam, other: Seam): Span | null {
  const [sideways, span] =
    seam.across === other.across
      ? [Math.abs(seam.at - other.at), other]
      : [outside(seam.at, other), { from: other.at, to: other.at }];
  if (sideways > near) return null;
  const reach = Math.sqrt(near * near - sideways * sideways);
  const from = Math.max(seam.from, span.from - reach);
  const to = Math.min(seam.to, span.to + reach);
  return from < to ? { from, to } : null;
}

/** How far a place lies beyond the ends of a span; 0 within it. */
function outside(place: number, { from, to }: Span): number {
  return Math.max(from - place, place - to, 0);
}

/** `spans`: by where they begin. */
function unionLength(spans: readonly Span[]): number {
  let total = 0;
  let reached = Number.NEGATIVE_INFINITY;
  for (const { from, to } of spans) {
    if (to <= reached) continue;
    total += to - Math.max(from, reached);
    reached = to;
  }
  return total;
}
