import type { CheckCommand } from "./commands.ts";
import type { ExitStatus, Terminal } from "./terminal.ts";

export async function runCheck(_command: CheckCommand, _terminal: Terminal): Promise<ExitStatus> {
  return 2;
}
