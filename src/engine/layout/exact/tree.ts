import { made, type Parts } from "./parts.ts";
import type { Sort } from "./sorts.ts";
import type { Branch } from "./types.ts";

type Room = { readonly width: number; readonly height: number };

/** Writes out how a part is sewn, with plain cloth to the right and below until it has the size of `room`. */
export function treeOf(part: number, room: Room, parts: Parts, sorts: readonly Sort[]): Branch {
  const taken = sorts.map(() => 0);
  const own = (at: number): Branch => {
    const size = { width: parts.width[at] ?? 0, height: parts.height[at] ?? 0 };
    const [one, other] = [parts.one[at] ?? 0, parts.other[at] ?? 0];
    if (parts.made[at] === made.single) return { ...size, ...single(one, other) };
    const beside = parts.made[at] === made.beside;
    return join(
      beside,
      [one, other].map((inner) => grown(own(inner), roomIn(size, inner, beside))),
    );
  };
  const roomIn = ({ width, height }: Room, inner: number, beside: boolean): Room =>
    beside ? { width: parts.width[inner] ?? 0, height } : { width, height: parts.height[inner] ?? 0 };
  const single = (sort: number, face: number) => {
    const copy = taken[sort] ?? 0;
    taken[sort] = copy + 1;
    const { from, faces } = sorts[sort] ?? { from: [], faces: [] };
    return { kind: "item" as const, item: from[copy] ?? -1, turned: faces[face]?.turned ?? false };
  };
  return grown(own(part), room);
}

export function plain(width: number, height: number): Branch {
  return { kind: "plain", width, height };
}

function grown(branch: Branch, { width, height }: Room): Branch {
  const row =
    width === branch.width ? branch : join(true, [branch, plain(width - branch.width, branch.height)]);
  return height === row.height ? row : join(false, [row, plain(width, height - row.height)]);
}

/** Parts of the same direction are taken in. */
function join(beside: boolean, branches: readonly Branch[]): Branch {
  const parts = branches.flatMap((branch) =>
    branch.kind === "join" && branch.beside === beside ? branch.parts : [branch],
  );
  const [first] = parts;
  const along = parts.reduce((sum, part) => sum + (beside ? part.width : part.height), 0);
  const across = (beside ? first?.height : first?.width) ?? 0;
  const size = beside ? { width: along, height: across } : { width: across, height: along };
  return { kind: "join", beside, parts, ...size };
}
