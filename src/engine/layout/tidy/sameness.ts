import type { LayoutNode } from "../types.ts";
import type { Bough } from "./bough.ts";

/** Tells boughs that show the same from others: each makes one number, the same for all that are made alike. */
export class Sameness {
  private readonly numbers = new Map<string, number>();
  private readonly known = new WeakMap<Bough | LayoutNode, number>();

  of(bough: Bough): number {
    const before = this.known.get(bough);
    if (before !== undefined) return before;
    const number = this.numberOf(bough.kind === "leaf" ? this.leafKey(bough) : this.forkKey(bough));
    this.known.set(bough, number);
    return number;
  }

  private leafKey({ node, spot }: Bough & { readonly kind: "leaf" }): string {
    const before = this.known.get(node);
    const number = before ?? this.numberOf(JSON.stringify(node));
    if (before === undefined) this.known.set(node, number);
    return `${spot} ${number}`;
  }

  private forkKey({ beside, parts }: Bough & { readonly kind: "fork" }): string {
    let key = beside ? "b" : "d";
    for (const part of parts) key += ` ${this.of(part)}`;
    return key;
  }

  private numberOf(key: string): number {
    const before = this.numbers.get(key);
    if (before !== undefined) return before;
    this.numbers.set(key, this.numbers.size);
    return this.numbers.size - 1;
  }
}
