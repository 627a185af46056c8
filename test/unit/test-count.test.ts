import { describe, expect, it } from "vitest";
import { countTests } from "../../scripts/test-count.mjs";

const report = {
  numPassedTests: 3,
  numFailedTests: 0,
  numPendingTests: 2,
  numTodoTests: 1,
  testResults: [{ status: "passed", assertionResults: [{}, {}, {}] }],
};

describe("the count that ends `npm test`", () => {
  it("is the runner's own when all went well", () => {
    expect(countTests(report, 0)).toEqual({ passed: 3, failed: 0, skipped: 3 });
  });

  it("has each failed test once", () => {
    const file = { status: "failed", assertionResults: [{}, {}] };
    expect(countTests({ ...report, numFailedTests: 2, testResults: [file] }, 1).failed).toBe(2);
  });

  it("has a file that could not be loaded as a failure", () => {
    const files = [...report.testResults, { status: "failed", assertionResults: [] }];
    expect(countTests({ ...report, testResults: files }, 1).failed).toBe(1);
  });

  it("has an error outside every test as a failure", () => {
    expect(countTests(report, 1).failed).toBe(1);
  });

  it("has a run that ended without a report as a failure", () => {
    expect(countTests(undefined, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});
