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

/** The lesser share of the two: how much of the seams of each lies more than ½ in from any seam of the other. */
export function apart(one: LayoutNode, other: LayoutNode): number {
  const [a, b] = [seamsOf(one), seamsOf(other)];
  return Math.min(shareApart(a, b), shareApart(b, a));
}

/** Share of the length of `seams` that lies more than ½ in from all of `others`, 0 to 1. Without seams nothing does. */
export function shareApart(seams: readonly Seam[], others: readonly Seam[]): number {
  const whole = seams.reduce((sum, { from, to }) => sum + to - from, 0);
  const far = seams.reduce((sum, seam) => sum + seam.to - seam.from - nearLength(seam, others), 0);
  return whole === 0 ? 0 : far / whole;
}

/** How much of a seam lies within ½ in of one of the others. */
function nearLength(seam: Seam, others: readonly Seam[]): number {
  const spans = others.flatMap((other) => nearSpan(seam, other) ?? []);
  return unionLength(spans.sort((one, other) => one.from - other.from));
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
