/** Whether the system gives a tab and the installed app each a store of its own: only its browsers know this word. */
export function keepsApart(): boolean {
  return "standalone" in navigator;
}
