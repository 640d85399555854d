import { useDeferredValue, useState, useSyncExternalStore } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import { type HeapView, heapViews } from "../../../words/index.ts";
import { useLeftoversTexts } from "./heapContext.ts";
import styles from "./views.module.css";

/** One thing at a time on a phone; side by side or one alone on a tablet; everything on a laptop. */
export function useView() {
  const isTablet = useWidth("(min-width: 44rem)");
  const isLaptop = useWidth("(min-width: 68rem)");
  const [picked, setView] = useState<HeapView | null>(null);
  const views: readonly HeapView[] = isLaptop
    ? []
    : isTablet
      ? heapViews
      : heapViews.filter((one) => one !== "all");
  const usual: HeapView = isTablet ? "all" : "piles";
  const view = isLaptop ? "all" : picked !== null && views.includes(picked) ? picked : usual;
  // Which one was pressed is marked at once; what it shows, hundreds of rows, follows a moment later.
  const shown = useDeferredValue(view);
  return { views, view, shown, setView, shows: (part: HeapView) => shown === "all" || shown === part };
}

function useWidth(query: string): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = matchMedia(query);
      list.addEventListener("change", changed);
      return () => list.removeEventListener("change", changed);
    },
    () => matchMedia(query).matches,
  );
}

type ViewsProps = {
  readonly views: readonly HeapView[];
  readonly view: HeapView;
  readonly onView: (view: HeapView) => void;
};

export function Views({ views, view, onView }: ViewsProps) {
  const texts = useLeftoversTexts();
  if (views.length === 0) return null;
  return (
    <ToggleButtonGroup
      aria-label={texts.view}
      className={`${styles.views}`}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[view]}
      onSelectionChange={(keys) => {
        const picked = views.find((one) => keys.has(one));
        if (picked !== undefined) onView(picked);
      }}
    >
      {views.map((one) => (
        <ToggleButton key={one} id={one} className={`${styles.view}`}>
          {texts.views[one]}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}
