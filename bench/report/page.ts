import type { PageRow } from "../page.ts";
import type { Raw } from "../raw.ts";
import { markdown, origin } from "./table.ts";

export function pageText([raw]: readonly Raw<PageRow>[]): string {
  if (raw === undefined) return "";
  const mega = (bytes: number) => (bytes / 2 ** 20).toFixed(0);
  const rows = raw.rows.map((row) => [
    row.heap,
    String(row.longTasks),
    row.longest.toFixed(0),
    Math.max(0, ...row.presses).toFixed(0),
    row.stopped < 0 ? "not seen" : row.stopped.toFixed(0),
    mega(row.mostBytes - row.idleBytes),
  ]);
  const heads = [
    "heap",
    "tasks over 50 ms",
    "longest, ms",
    "a press, ms",
    "stopped after, ms",
    "memory, MB more",
  ];
  return [
    "## The Plan page while the solver works",
    "The built app in Chromium, 1440 × 900, a dense heap searched by all workers, another style chosen every half second. Tasks of the page's own " +
      "thread; the slowest press, from the key until what it does is drawn; from *Stop here* until the page says so; what the page and its " +
      "workers hold at most, over what they held with the leftovers entered and nothing planned yet.",
    origin([{ ...raw, machine: { ...raw.machine, pinned: false } }]),
    markdown({ heads, rows }),
  ].join("\n\n");
}
