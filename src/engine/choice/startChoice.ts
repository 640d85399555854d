import type { Style } from "../back/index.ts";
import { type Amount, amounts, type Job, type Wish } from "../cloth/index.ts";
import { type Plan, type PlanSearch, rankStyles, startPlan } from "../plan/index.ts";
import { type Choice, choose, usualWanted, type Wanted } from "./choose.ts";

export type ChoiceRequest = {
  readonly seed: number;
  /** Solver moves of each plan that is offered; those it is chosen from get a few. */
  readonly effort: number;
  readonly wanted?: Wanted;
};

/** A choice in the making. It can be stopped at any time: `choice()` takes from what there is. */
export type ChoiceSearch = {
  step(moves: number): void;
  readonly done: boolean;
  readonly moves: number;
  /** Moves it is likely to take in all. */
  readonly effort: number;
  /** The plan it is at, and the share of its pieced parts that is filled. */
  readonly style: Style;
  readonly covered: number;
  choice(): Choice<Plan>;
};

/** A first look at a plan, as a share of a long one. */
const glance = 0.1;

/**
 * Looks shortly at a plan of each style, and at one of each with a third less to sew; searches longer for those that
 * would be offered, until all that are offered have had their long search. The choice depends on job, seed and
 * effort alone.
 */
export function startChoice(job: Job, request: ChoiceRequest): ChoiceSearch {
  return new Choosing(job, request);
}

/** Her job with so much to sew; the same each time it is asked for. */
export function jobFor(job: Job, amount: Amount): Job {
  if (amount === "usual") return job;
  const made = jobs.get(job) ?? new Map<Amount, Job>();
  const wanted = made.get(amount) ?? withLess(job, amount);
  jobs.set(job, made.set(amount, wanted));
  return wanted;
}

// What is known of a job, such as which styles suit it, is known by the job itself.
const jobs = new WeakMap<Job, Map<Amount, Job>>();

function withLess(job: Job, amount: Exclude<Amount, "usual">): Job {
  switch (amount) {
    case "less":
      return { ...job, wishes: [...new Set<Wish>([...job.wishes, "sew-less"])] };
    case "afternoon":
      return { ...job, time: "afternoon" };
  }
}

export type Candidate = { readonly style: Style; readonly amount: Amount };

/** The plans a choice looks at first: every style as she wishes, and with less to sew. */
export function candidatesFor(job: Job): readonly Candidate[] {
  return amountsFor(job).flatMap((amount) => candidatesOf(job, amount));
}

/** How much there may be to sew in the plans to choose from. */
export function amountsFor(job: Job): readonly Amount[] {
  return amounts.filter((amount) => amount === "usual" || isLess(job, amount));
}

/** Those of the candidates that have so much to sew. */
export function candidatesOf(job: Job, amount: Amount): readonly Candidate[] {
  return rankStyles(jobFor(job, amount)).map((style) => ({ style, amount }));
}

function isLess({ wishes, time }: Job, amount: Amount): boolean {
  return amount === "less" ? !wishes.includes("sew-less") : time !== "afternoon";
}

/** Moves of a first look at a plan whose long one has so many. */
export function glanceOf(effort: number): number {
  return Math.max(1, Math.round(effort * glance));
}

type Look = { readonly candidate: Candidate; readonly search: PlanSearch; readonly isLong: boolean };

class Choosing implements ChoiceSearch {
  private readonly job: Job;
  private readonly request: ChoiceRequest;
  private readonly waiting: Candidate[];
  private readonly made = new Map<Candidate, { readonly plan: Plan; readonly isLong: boolean }>();
  private look: Look | null;
  private before = 0;

  constructor(job: Job, request: ChoiceRequest) {
    this.job = job;
    this.request = request;
    this.waiting = [...candidatesFor(job)];
    this.look = this.next();
  }

  get done(): boolean {
    return this.look === null;
  }

  get moves(): number {
    return this.before + (this.look?.search.moves ?? 0);
  }

  get effort(): number {
    const looks = candidatesFor(this.job).length * glanceOf(this.request.effort);
    return Math.max(this.moves, looks + (this.wanted.most + 1) * this.request.effort);
  }

  get style(): Style {
    return this.look?.candidate.style ?? this.choice().chosen[0]?.plan.style ?? "all-over";
  }

  get covered(): number {
    return this.look?.search.covered ?? 1;
  }

  step(moves: number): void {
    if (this.look === null) return;
    this.look.search.step(moves);
    if (!this.look.search.done) return;
    this.lay(this.look);
    this.look = this.next();
  }

  choice(): Choice<Plan> {
    // Stopped in the middle of its first look, that is what there is.
    if (this.look !== null && this.made.size === 0) this.lay(this.look);
    return choose(this.plans(), this.job, this.wanted);
  }

  private get wanted(): Wanted {
    return this.request.wanted ?? usualWanted;
  }

  private plans(): Plan[] {
    return [...this.made.values()].map(({ plan }) => plan);
  }

  private lay({ candidate, search, isLong }: Look): void {
    this.before += search.moves;
    this.made.set(candidate, { plan: search.plan(), isLong });
  }

  /** The next first look; after those a long look at the best that is offered and has had none. */
  private next(): Look | null {
    const candidate = this.waiting.shift();
    if (candidate !== undefined) return this.start(candidate, false);
    const offered = this.choice().chosen.map(({ plan }) => plan);
    const due = offered.flatMap((plan) =>
      [...this.made].filter(([, one]) => one.plan === plan && !one.isLong),
    );
    return due[0] === undefined ? null : this.start(due[0][0], true);
  }

  private start(candidate: Candidate, isLong: boolean): Look {
    const { style, amount } = candidate;
    const effort = isLong ? this.request.effort : glanceOf(this.request.effort);
    return {
      candidate,
      isLong,
      search: startPlan(jobFor(this.job, amount), { style, seed: this.request.seed, effort }),
    };
  }
}
