import { Component, type ReactNode, useContext } from "react";
import { Button } from "react-aria-components";
import { Notice } from "./notice.tsx";
import { ProjectContext, useFrameWords, useSaveProject } from "./surroundings.ts";

type BoundaryProps = { readonly children: ReactNode };
type Failure = "not-fetched" | "stopped";

/** When a page stops working the frame stays, with calm words and a way to keep everything. */
export class PageBoundary extends Component<BoundaryProps, { readonly failure: Failure | null }> {
  override state: { readonly failure: Failure | null } = { failure: null };

  static getDerivedStateFromError(error: unknown) {
    return { failure: failureOf(error) };
  }

  override render() {
    if (this.state.failure === null) return this.props.children;
    return <Stopped failure={this.state.failure} />;
  }
}

// Browsers name it differently; all of them call it a TypeError about a module.
function failureOf(error: unknown): Failure {
  return error instanceof TypeError && /module|import/i.test(error.message) ? "not-fetched" : "stopped";
}

function Stopped({ failure }: { readonly failure: Failure }) {
  const words = useFrameWords();
  const project = useContext(ProjectContext);
  const save = useSaveProject();
  const fetched = failure === "stopped";
  return (
    <Notice
      title={fetched ? words.wentWrong : words.pageNotHere}
      text={fetched ? words.wentWrongWhat : words.pageNotHereWhat}
    >
      {project !== null && (
        <Button className="button" onPress={() => save(project)}>
          {words.saveFileNow}
        </Button>
      )}
      <Button className="button next" onPress={() => location.reload()}>
        {words.loadAnew}
      </Button>
    </Notice>
  );
}
