import { describe, expect, it } from "vitest";
import { countReport } from "./count.ts";

const file = (status: string, tests: number) => ({ status, assertionResults: Array.from({ length: tests }) });

describe("counting tests", () => {
  it("takes passed and failed tests from the report", () => {
    const report = { numPassedTests: 3, numFailedTests: 2, testResults: [file("failed", 5)] };
    expect(countReport(report, false, "words")).toEqual({ passed: 3, failed: 2, output: "words" });
  });

  it("counts a file that could not be loaded as a failed test", () => {
    const report = { numPassedTests: 3, numFailedTests: 0, testResults: [file("passed", 3), file("failed", 0)] };
    expect(countReport(report, false, "")).toMatchObject({ passed: 3, failed: 1 });
  });

  it("counts a run that ended badly, tested nothing or left no report as one failed test", () => {
    const report = { numPassedTests: 3, numFailedTests: 0, testResults: [file("passed", 3)] };
    expect(countReport(report, true, "")).toMatchObject({ passed: 3, failed: 0 });
    expect(countReport(report, false, "")).toMatchObject({ passed: 3, failed: 1 });
    expect(countReport({ numPassedTests: 0, numFailedTests: 0, testResults: [] }, true, "").failed).toBe(1);
    expect(countReport(null, true, "")).toMatchObject({ passed: 0, failed: 1 });
  });
});
