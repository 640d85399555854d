type Report = {
  readonly numPassedTests: number;
  readonly numTotalTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
};

export function resultsOf(report: Report | null, status: number): { passed: number; failed: number };
