import {
  backFor,
  backingYardage,
  cutOffEdge,
  extraFor,
  extraWide,
  shopStep,
  usualExtraWide,
} from "../engine/back/index.ts";
import { defaultSettings, extraLimits, largestBack, type Top } from "../engine/cloth/index.ts";
import type { Size } from "../engine/length/index.ts";
import type { CommandProblem } from "../words/index.ts";
import type { SizeCommand } from "./commands.ts";
import { type ExitStatus, refuse, type Terminal } from "./terminal.ts";

/** Tells how large the back must be, and what it takes in one plain cloth. */
export function runSize(command: SizeCommand, terminal: Terminal): ExitStatus {
  const { unit, method } = command;
  const words = terminal.words(unit);
  const top: Top = { ...command.top, method, extra: command.extra ?? extraFor(method, unit) };
  const back = backFor(top, top.extra);
  const problems = sizeProblems(top, back);
  if (problems.length > 0)
    return refuse(
      terminal,
      problems.map((problem) => words.problem(problem)),
    );
  const { clothWidth, plainSeam: seam } = defaultSettings[unit];
  const roundTo = shopStep(unit);
  const { vertical, horizontal } = backingYardage(back, { clothWidth, seam, roundTo });
  const wide = extraWide(back, roundTo);
  const answer = {
    top,
    back,
    cutOff: cutOffEdge({ top, back }),
    clothWidth,
    backings: [vertical, horizontal],
    wide: wide && { width: usualExtraWide, buy: wide.buy },
  };
  terminal.say(words.size(answer));
  return 0;
}

function sizeProblems({ extra }: Top, back: Size): CommandProblem[] {
  if (extra > extraLimits.most) return [{ kind: "out-of-range", option: "extra", ...extraLimits }];
  const isTooLarge = Math.max(back.width, back.height) > largestBack;
  return isTooLarge ? [{ kind: "back-too-large", back, most: largestBack }] : [];
}
