type Report = {
  readonly numPassedTests: number;
  readonly numTotalTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
};

type BrowserReport = {
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
  };
  readonly errors: readonly unknown[];
};

type Counted = { passed: number; failed: number };

export function resultsOf(report: Report | null, status: number): Counted;
export function browserResultsOf(report: BrowserReport | null, status: number): Counted;
