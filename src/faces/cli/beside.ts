import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { JobInput, JobName, JobOutput } from '../../jobs/jobs.ts'

/**
 * Starts one named job in a thread at once, without waiting for this thread to be idle, as a pool would.
 * Gives undefined where there is no second core or the thread failed: the caller then does the work itself.
 */
export function beside<N extends JobName>(name: N, input: JobInput<N>): Promise<JobOutput<N> | undefined> {
  const file = resolve(dirname(fileURLToPath(import.meta.url)), 'worker.js')
  if (availableParallelism() < 2 || !existsSync(file)) return Promise.resolve(undefined)
  return new Promise((done) => {
    const worker = new Worker(file, {
      workerData: { name, input },
      resourceLimits: { maxYoungGenerationSizeMb: 64 },
    })
    worker.once('message', (output: JobOutput<N>) => done(output))
    worker.once('error', () => done(undefined))
    worker.once('exit', () => done(undefined))
  })
}
