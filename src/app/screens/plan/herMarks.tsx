import type { LeftoverChange } from "../../../store/index.ts";
import { planTexts } from "../../../words/index.ts";
import { useProject, useProjectContent } from "../../frame/index.ts";
import { useTexts } from "../../parts/texts.ts";
import type { Wish } from "./desk.ts";
import { Toggle } from "./toggle.tsx";

/** Her marks on the leftover that the cell is cut from; the plan is made again at once. */
export function HerMarks({ row, wish }: { readonly row: string; readonly wish: Wish }) {
  const texts = useTexts(planTexts);
  const project = useProject();
  const leftover = useProjectContent().leftovers.find(({ id }) => id === row);
  if (leftover === undefined) return null;
  const { use, keep } = leftover.cells;
  // The style she looks at is the one she goes on with.
  const change = (cells: NonNullable<LeftoverChange["cells"]>) => {
    project.setWishes(wish);
    project.changeRow(row, { cells });
  };
  const mark = (value: "must" | "keep-back", isOn: boolean) =>
    change({ use: isOn ? { text: value, value } : null });
  const whole = (isOn: boolean) => change({ keep: isOn ? { text: "whole", value: "whole" } : null });
  return (
    <>
      <Toggle label={texts.mustBeIn} isOn={use?.value === "must"} onChange={(isOn) => mark("must", isOn)} />
      <Toggle
        label={texts.leaveOut}
        isOn={use?.value === "keep-back"}
        onChange={(isOn) => mark("keep-back", isOn)}
      />
      <Toggle label={texts.keepWhole} isOn={keep?.value === "whole"} onChange={whole} />
    </>
  );
}
