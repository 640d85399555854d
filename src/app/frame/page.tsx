import { type ComponentType, lazy, Suspense, useEffect, useRef } from "react";
import { screens } from "../screens/index.ts";
import { PageBoundary } from "./boundary.tsx";
import type { ScreenName } from "./route.ts";
import { useFrameWords } from "./surroundings.ts";

const pages = new Map<ScreenName, ComponentType>(screens.map(({ name, load }) => [name, lazy(load)]));

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
let opened = false;

/** Stands beside the content, so that it is there only once the content is. */
function ReadFromHeading() {
  const place = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const heading = place.current?.closest("main")?.querySelector("h1");
    if (opened && heading) {
      heading.tabIndex = -1;
      heading.focus({ preventScroll: true });
      scrollTo(0, 0);
    }
    opened = true;
  }, []);
  return <span ref={place} hidden />;
}
