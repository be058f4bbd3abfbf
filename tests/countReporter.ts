import type { Reporter, TestModule } from 'vitest/node'

/** Prints one closing line, `N passed, N failed, N skipped`, that any build server can read. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    let passed = 0
    let failed = errors.length
    let skipped = 0
    for (const module of modules) {
      let own = 0
      for (const test of module.children.allTests()) {
        const state = test.result().state
        if (state === 'passed') passed++
        else if (state === 'failed') {
          failed++
          own++
        } else skipped++
      }
      // a file that failed to load has no failed test of its own, but it has failed
      if (own === 0 && module.state() === 'failed') failed++
    }
    console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`)
  }
}
