/** How much may still be looked at. Counted, never timed: the same task ends at the same place on any machine. */
export class Budget {
  spent = 0;
  readonly steps: number;

  constructor(steps: number) {
    this.steps = steps;
  }

  get isSpent(): boolean {
    return this.spent >= this.steps;
  }
}
