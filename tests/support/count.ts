/** Counts the tests in a report that Vitest wrote. */

export interface Count {
  readonly passed: number;
  readonly failed: number;
  readonly output: string;
}

/** The part of Vitest's JSON report that counts. */
export interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/**
 * A file that could not be loaded holds no tests but failed all the same; so did a run that ended badly for another
 * reason (an error outside any test), a run without a report, and a run in which nothing was tested.
 */
export function countReport(report: Report | null, ended: boolean, output: string): Count {
  if (!report) return { passed: 0, failed: 1, output };
  const unloaded = report.testResults.filter((f) => f.status === "failed" && f.assertionResults.length === 0).length;
  const failed = report.numFailedTests + unloaded;
  const passed = report.numPassedTests;
  const silent = failed === 0 && (!ended || passed === 0);
  return { passed, failed: silent ? 1 : failed, output };
}
