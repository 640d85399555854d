import type { AppFigure, AppRow } from "../app.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin } from "./table.ts";

export function appText([raw]: readonly Raw<AppRow>[]): string {
  if (raw === undefined) return "";
  const rows = raw.rows.map(({ name, values, share, most }) => {
    const reached = shareOf(values, share);
    return [
      names[name],
      String(values.length),
      said(name, reached),
      said(name, most),
      reached <= most ? "yes" : "no",
    ];
  });
  return [
    "## The app",
    "The built app in Chromium, 820 × 1180, its processor slowed to a quarter, files packed as servers pack them. A cold start has nothing " +
      "kept and 1.6 Mbit/s with 150 ms there and back, until the start page can be used; a warm one has no network. The back that is opened " +
      "has 2000 pieces in 400 rows and 50 pictures, until its leftovers are drawn. A press counts until what it does is on the screen. " +
      "The worst of all that was taken, or the share that is named.",
    origin([{ ...raw, machine: { ...raw.machine, pinned: false } }]),
    markdown({ heads: ["what", "taken", "reached", "at most", "kept"], rows }),
  ].join("\n\n");
}

const names: { readonly [F in AppFigure]: string } = {
  "first-script": "script before the start page, packed, kB",
  "cold-start": "cold start, ms",
  "warm-start": "warm start, ms",
  shift: "layout shift",
  open: "a large back opens, ms",
  interaction: "a press in it, 98 %, ms",
  "interaction-solving": "a press while plans are searched for, 98 %, ms",
  drag: "a frame while a piece is dragged over its plan, 95 %, ms",
  heap: "memory of the page's script, MB",
};

function said(name: AppFigure, value: number): string {
  switch (name) {
    case "first-script":
      return (value / 1000).toFixed(0);
    case "heap":
      return (value / 2 ** 20).toFixed(0);
    case "shift":
      return value.toFixed(3);
    default:
      return value.toFixed(0);
  }
}

/** What so great a share of them keeps to. */
function shareOf(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0;
}
