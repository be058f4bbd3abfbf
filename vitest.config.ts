import { defineConfig } from 'vitest/config'

const longPages = [
  'tests/e2e/breath.test.ts',
  'tests/e2e/runs.test.ts',
  'tests/e2e/recordings.test.ts',
  'tests/e2e/tachometer.test.ts',
]

// measured against thousands of whole balances
const measurements = ['tests/slow/designSearch.slow.test.ts']

// how long a browser test waits for what it needs, at most: on a machine busy with other work things come late, not wrong
const inBrowser = {
  testTimeout: 300_000,
  hookTimeout: 180_000,
  expect: { poll: { timeout: 60_000 } },
}

export default defineConfig({
  test: {
    reporters: ['default', './tests/countReporter.ts'],
    // a browser test keeps about a core busy, so no more than two files run at a time
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'unit',
          setupFiles: ['./tests/seed.ts'],
          // unit tests share one module graph: loading it anew for each file took a quarter of the time
          isolate: false,
          include: [
            'src/**/*.test.ts',
            'src/**/*.test.tsx',
            'checks/**/*.test.ts',
            'bench/**/*.test.ts',
            'tests/unit/**/*.test.ts',
          ],
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
      {
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          exclude: longPages,
          ...inBrowser,
        },
      },
      {
        // long comparisons, and the pages whose tests wait for whole searches and recordings: .ci/run and
        // npm run test:slow run them
        test: {
          name: 'slow',
          include: ['tests/slow/**/*.test.ts', ...longPages],
          exclude: measurements,
          ...inBrowser,
        },
      },
      {
        // minutes to an hour of whole balances, to be run when the balance, its doubts or the search change: npm run test:long
        test: { name: 'long', include: measurements, ...inBrowser },
      },
    ],
  },
})
