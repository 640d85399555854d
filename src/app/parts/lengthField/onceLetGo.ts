/**
 * Does what moves other things on the page once the press that led to it is over: a field left or entered by a press
 * shows or hides what stands below it, and nothing may move away under her finger between down and up. What she pressed
 * would then not be what is clicked, and a field would take no letters.
 */
export function onceLetGo(act: () => void): void {
  requestAnimationFrame(() => (document.querySelector(":active") === null ? act() : onceLetGo(act)));
}
