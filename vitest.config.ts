import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    reporters: ['default', './tests/countReporter.ts'],
    // browser tests mostly wait for the page, so even two cores keep three files busy
    maxWorkers: 3,
    projects: [
      {
        test: {
          name: 'unit',
          setupFiles: ['./tests/seed.ts'],
          include: [
            'src/**/*.test.ts',
            'src/**/*.test.tsx',
            'checks/**/*.test.ts',
            'tests/unit/**/*.test.ts',
          ],
          testTimeout: 30_000,
        },
      },
      {
        test: {
          name: 'e2e',
          include: ['tests/e2e/**/*.test.ts'],
          testTimeout: 90_000,
          hookTimeout: 90_000,
        },
      },
      {
        // long comparisons with the outside world, run by .ci/run and npm run test:slow
        test: { name: 'slow', include: ['tests/slow/**/*.test.ts'], testTimeout: 300_000 },
      },
    ],
  },
})
