import {
  type Candidate,
  type ChoiceNote,
  candidatesFor,
  choose,
  type Offered,
  type Reason,
} from "../../engine/choice/index.ts";
import type { Job } from "../../engine/cloth/index.ts";

/** A plan to choose from, and what it was made for. */
export type CandidatePlan<P> = Candidate & { readonly plan: P };

/** What is offered, the best first, each by what it was made for. */
export type NamedChoice = {
  readonly chosen: readonly (Candidate & { readonly reasons: readonly Reason[] })[];
  readonly notes: readonly ChoiceNote[];
};

export function nameOf({ style, amount }: Candidate): string {
  return `${style} ${amount}`;
}

/** What lies there to choose from for a job, each candidate once. */
export class Choosing {
  private readonly job: Job;
  private readonly laid = new Map<string, CandidatePlan<Offered>>();

  constructor(job: Job) {
    this.job = job;
  }

  lay({ style, amount, plan }: CandidatePlan<Offered>): void {
    const { layout, figures, buy, unused } = plan;
    // The rest of a plan is long, and nothing is chosen by it.
    const weighed = { style: plan.style, layout, figures, buy, unused };
    this.laid.set(nameOf({ style, amount }), { style, amount, plan: weighed });
  }

  choose(): NamedChoice {
    const known = this.inOrder();
    const { chosen, notes } = choose(
      known.map(({ plan }) => plan),
      this.job,
    );
    const named = chosen.flatMap(({ plan, reasons }) =>
      known.filter((one) => one.plan === plan).map(({ style, amount }) => ({ style, amount, reasons })),
    );
    return { chosen: named, notes };
  }

  /** Always the same, however the searches came to their end. */
  private inOrder(): readonly CandidatePlan<Offered>[] {
    return candidatesFor(this.job).flatMap((candidate) => this.laid.get(nameOf(candidate)) ?? []);
  }
}
