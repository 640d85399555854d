import * as v from "valibot";

/** What tabs tell each other. Nothing but names: what happened is read from storage, where it is already kept. */
export type Message =
  | { readonly kind: "written"; readonly project: string }
  /** A project came, went or changed its title. */
  | { readonly kind: "list" };

const messageSchema = v.variant("kind", [
  v.object({ kind: v.literal("written"), project: v.string() }),
  v.object({ kind: v.literal("list") }),
]);

export type Tabs = { readonly tell: (message: Message) => void; readonly close: () => void };

/** The other tabs of this store. A browser without channels has them find out when they are looked at again. */
export function otherTabs(name: string, onMessage: (message: Message) => void): Tabs {
  if (typeof BroadcastChannel === "undefined") return { tell: () => {}, close: () => {} };
  const channel = new BroadcastChannel(`verso ${name}`);
  channel.onmessage = ({ data }: { readonly data: unknown }) => {
    const read = v.safeParse(messageSchema, data);
    if (read.success) onMessage(read.output);
  };
  return { tell: (message) => channel.postMessage(message), close: () => channel.close() };
}
