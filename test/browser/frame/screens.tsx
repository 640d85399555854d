import { Button, Input, Label, TextField } from "react-aria-components";
import { useProject, useProjectState, useStoreState } from "../../../src/app/frame/index.ts";
import type { Screen } from "../../../src/app/frame/screen.ts";

// Pages that are nothing but a heading, something to press and something to write in.
function Start() {
  const { projects } = useStoreState();
  return (
    <>
      <h1>Start</h1>
      <p>{projects?.length} projects</p>
      <a href="#/there/size">Garden room back</a>
    </>
  );
}

function Step({ name }: { readonly name: string }) {
  const project = useProject();
  const { title } = useProjectState().project;
  return (
    <>
      <h1>{name}</h1>
      <p data-testid="title">{title}</p>
      <Button className="button next" onPress={() => project.setTitle(`${title}, ${name}`)}>
        Rename
      </Button>
      <TextField>
        <Label>Note</Label>
        <Input />
      </TextField>
      {name === "Sew" && title.endsWith("Sew") && <Broken />}
    </>
  );
}

function Broken(): never {
  throw new Error("broken on purpose");
}

const page = (Page: () => React.ReactNode) => () => Promise.resolve({ default: Page });
const notFetched = () => Promise.reject(new TypeError("Failed to fetch dynamically imported module"));

/** Stands in the place of `src/app/screens/index.ts`. */
export const screens: readonly Screen[] = [
  { name: "projects", load: page(Start) },
  { name: "size", load: page(() => <Step name="Size" />) },
  { name: "leftovers", load: page(() => <Step name="Leftovers" />) },
  { name: "plan", load: notFetched },
  { name: "sew", load: page(() => <Step name="Sew" />) },
];
