import type { DisplayUnit } from "../engine/length/index.ts";
import type { CliWords } from "../words/index.ts";
import type { Screen } from "./progress.ts";
import type { Stop } from "./search.ts";

/** All a command has to do with the world, so that the commands themselves can be tried without one. */
export type Terminal = {
  /** The folder the user stands in. */
  readonly folder: string;
  readonly words: (unit: DisplayUnit) => CliWords;
  readonly now: () => Date;
  /** Where progress is shown. */
  readonly screen: Screen;
  /** `listen`: from now on Ctrl-C asks for the best so far. Until then there is nothing to keep, and it ends all. */
  readonly stop: Stop & { listen(): void };
  /** Standard output, a line or several. */
  say(text: string): void;
  /** Standard output, a document as it is. */
  deliver(document: string | Uint8Array): void;
  /** Standard error, a line. */
  complain(text: string): void;
};

/** How a command ended: done, or it could not be carried out as given. */
export type ExitStatus = 0 | 2;

/** A line for each problem, and the status that goes with them. */
export function refuse(terminal: Terminal, lines: readonly string[]): ExitStatus {
  for (const line of lines) terminal.complain(line);
  return 2;
}
