import { availableParallelism } from 'node:os'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { MessageChannel } from 'node:worker_threads'
import { Piscina } from 'piscina'
import type { JobInput, JobName, JobOutput } from '../../jobs/jobs.ts'

export interface Pool {
  /** Runs a named job in a thread; an abort of `signal` ends the thread and rejects. */
  run<N extends JobName>(
    name: N,
    input: JobInput<N>,
    onProgress?: (part: number, says: string) => void,
    signal?: AbortSignal,
    onEarly?: (answer: JobOutput<N>) => void,
  ): Promise<JobOutput<N>>
  close(): Promise<void>
}

/** Worker threads for long jobs on the command line, at most one a core. */
export function openPool(threads = availableParallelism()): Pool {
  const here = dirname(fileURLToPath(import.meta.url))
  const piscina = new Piscina({
    filename: resolve(here, 'worker.js'),
    minThreads: 0,
    maxThreads: Math.max(1, threads),
    idleTimeout: 2000,
  })
  return {
    async run(name, input, onProgress, signal, onEarly) {
      const { port1, port2 } = new MessageChannel()
      port1.on('message', (told: { part: number; says: string } | { early: never }) => {
        if ('early' in told) onEarly?.(told.early)
        else onProgress?.(told.part, told.says)
      })
      port1.unref()
      try {
        return await piscina.run(
          { name, input, port: port2 },
          { transferList: [port2], ...(signal ? { signal } : {}) },
        )
      } finally {
        port1.close()
      }
    },
    close: () => piscina.destroy(),
  }
}
