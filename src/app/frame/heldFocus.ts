/** Where an element stood: all that it was in, the innermost first, and as which child. */
type Place = { readonly around: Element; readonly at: number };

type Held = { readonly element: Element; readonly places: readonly Place[]; readonly byKeys: boolean };

/**
 * Where what has the focus goes away, or can't be used any more, because of what she did with it, what took its place
 * gets the focus: else the keyboard begins again at the top, and a screen reader falls silent. Another page begins at
 * its heading by itself. Gives what ends it.
 */
export function holdFocus(root: HTMLElement): () => void {
  let held: Held | null = null;
  const focused = ({ target }: FocusEvent) => {
    held = target instanceof Element ? heldAt(target) : null;
  };
  // Gone as well: but she left it herself where it is still there.
  const left = ({ target }: FocusEvent) =>
    queueMicrotask(() => {
      if (held?.element === target && canBeUsed(held.element) && document.activeElement !== target)
        held = null;
    });
  const changes = new MutationObserver(() => {
    if (held === null || canBeUsed(held.element) || !isLost(held.element)) return;
    const { element, places, byKeys } = held;
    held = null;
    if (byKeys) return inPlaceOf(places)?.focus();
    // Who presses with finger or mouse looks where she pressed: that is drawn first, and the page stays there.
    onceDrawn(() => {
      if (isLost(element)) inPlaceOf(places)?.focus({ preventScroll: true });
    });
  });
  root.addEventListener("focusin", focused);
  root.addEventListener("focusout", left);
  changes.observe(root, { childList: true, subtree: true, attributes: true, attributeFilter: ["disabled"] });
  return () => {
    root.removeEventListener("focusin", focused);
    root.removeEventListener("focusout", left);
    changes.disconnect();
  };
}

function onceDrawn(act: () => void): void {
  requestAnimationFrame(() => setTimeout(act));
}

function heldAt(element: Element): Held {
  return { element, places: placesOf(element), byKeys: element.matches(":focus-visible") };
}

function placesOf(element: Element): readonly Place[] {
  const around = element.parentElement;
  if (around === null || element.matches("main, body")) return [];
  return [{ around, at: [...around.children].indexOf(element) }, ...placesOf(around)];
}

function canBeUsed(element: Element): boolean {
  return element.isConnected && !element.matches(":disabled");
}

/** Asked of as few as will do: a long list has hundreds of things to press. */
function canBeGoneTo(one: HTMLElement): boolean {
  return one.tabIndex >= 0 && canBeUsed(one) && one.checkVisibility();
}

function isLost(element: Element): boolean {
  const { activeElement } = document;
  return activeElement === null || activeElement === document.body || activeElement === element;
}

/** What can be used nearest to where it stood, what follows first; or else what is said there. */
function inPlaceOf(places: readonly Place[]): HTMLElement | null {
  for (const { around, at } of places) {
    if (!around.isConnected || around.matches("main, body")) continue;
    const all = [...around.querySelectorAll<HTMLElement>("a[href], button, input, select, summary")];
    const following = [...around.children].slice(at);
    const follows = (one: Element) => following.some((part) => part.contains(one));
    const found = all.find((one) => follows(one) && canBeGoneTo(one)) ?? all.findLast(canBeGoneTo);
    const said = [...around.querySelectorAll<HTMLElement>("[role=status]")].find(
      ({ textContent }) => textContent,
    );
    if (found === undefined && said !== undefined) said.tabIndex = -1;
    if (found !== undefined || said !== undefined) return found ?? said ?? null;
  }
  return null;
}
