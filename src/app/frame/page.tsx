import { type ComponentType, lazy, Suspense, useEffect, useRef } from "react";
import { screens } from "../screens/index.ts";
import { PageBoundary } from "./boundary.tsx";
import type { ScreenName } from "./route.ts";
import { useFrameWords } from "./surroundings.ts";

const pages = new Map<ScreenName, ComponentType>(screens.map(({ name, load }) => [name, lazy(load)]));

let tellShown: () => void = () => {};

/** The page that she asked for is there, or has not come in a time in which any page would. */
export const firstPageShown = new Promise<void>((done) => {
  tellShown = done;
  setTimeout(done, 15_000);
});

/** Asks for a page before there is anything to draw it in. */
export async function fetchPage(name: ScreenName): Promise<void> {
  // What can't be fetched is asked for once more, and its failure told, where it would be shown.
  await screens
    .find((screen) => screen.name === name)
    ?.load()
    .catch(() => {});
}

/**
 * Fetches the pages she has not opened yet, once there is nothing else to do. A tab that has them all needs nothing
 * more from whoever serves the app, though the app be renewed there meanwhile.
 */
export function fetchPagesWhenIdle(): void {
  const fetchAll = () => {
    // What can't be fetched now is tried again when she opens it.
    for (const { load } of screens) load().catch(() => {});
  };
  if ("requestIdleCallback" in window) requestIdleCallback(fetchAll, { timeout: 5000 });
  else setTimeout(fetchAll, 2000);
}

/** The page she is on. Coming to another one, the reading begins at its heading. */
export function Page({ name, title }: { readonly name: ScreenName; readonly title: string | null }) {
  const words = useFrameWords();
  const Content = pages.get(name);
  useEffect(() => {
    document.title = words.pageTitle(words[name], title);
  }, [words, name, title]);
  if (Content === undefined) return null;
  return (
    <PageBoundary key={name}>
      <Suspense fallback={<p className="patience">{words.opening}</p>}>
        <Content />
        <ReadFromHeading />
      </Suspense>
    </PageBoundary>
  );
}

// The page that is there when the app opens is read from its very beginning anyway.
let hasMoved = false;
addEventListener("hashchange", () => {
  hasMoved = true;
});

/** Stands beside the content, so that it is there only once the content is. */
function ReadFromHeading() {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => tellShown(), []);
  useEffect(() => {
    const heading = place.current?.closest("main")?.querySelector("h1");
    if (!hasMoved || !heading) return;
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
    scrollTo(0, 0);
  }, []);
  return <span ref={place} hidden />;
}
