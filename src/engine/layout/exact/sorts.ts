import type { Item, Task } from "./types.ts";

/** Items that are alike in size and value. */
export type Sort = {
  readonly value: number;
  readonly copies: number;
  readonly faces: readonly Face[];
  /** The items they are, one entry for each copy. */
  readonly from: readonly number[];
};

export type Face = { readonly width: number; readonly height: number; readonly turned: boolean };

/** The items that can show at all, like ones put together, and no more of them than the region could hold. */
export function sortsOf({ width, height, items, smallest = 1 }: Task): Sort[] {
  const sorts = new Map<string, Sort>();
  for (const [index, item] of items.entries()) {
    if (item.value <= 0 || item.copies <= 0 || Math.min(item.width, item.height) < smallest) continue;
    const faces = facesOf(item).filter((face) => face.width <= width && face.height <= height);
    if (faces.length === 0) continue;
    const key = `${item.width} ${item.height} ${item.value} ${faces.length}`;
    const from = [...(sorts.get(key)?.from ?? []), ...new Array<number>(item.copies).fill(index)];
    const most = Math.floor((width * height) / (item.width * item.height));
    sorts.set(key, { value: item.value, copies: Math.min(from.length, most), faces, from });
  }
  return [...sorts.values()];
}

function facesOf({ width, height, turns }: Item): Face[] {
  const upright = { width, height, turned: false };
  return turns && width !== height ? [upright, { width: height, height: width, turned: true }] : [upright];
}
