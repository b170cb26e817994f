import type {Reporter, TestModule} from "vitest/node";

/** Ends a run with one plain line, `N passed, N failed, N skipped`, that any log reader understands. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const count = {passed: 0, failed: 0, skipped: 0, pending: 0};
    for (const module of modules) {
      for (const test of module.children.allTests()) count[test.result().state]++;
    }
    // A file that did not load has no tests to count as failed.
    const broken = modules.filter(
      (module) => module.state() === "failed" && module.errors().length > 0,
    ).length;
    process.stdout.write(
      `\n${count.passed} passed, ${count.failed + broken} failed, ${count.skipped + count.pending} skipped\n`,
    );
  }
}
