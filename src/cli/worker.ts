import type { MessagePort } from 'node:worker_threads'
import type { Job } from '../jobs/job.ts'
import { type JobName, jobs } from '../jobs/jobs.ts'

interface Order {
  name: JobName
  input: unknown
  /** where progress goes */
  port: MessagePort
}

/** Runs one named job in a worker thread; calling it off ends the thread. */
export async function run({ name, input, port }: Order): Promise<unknown> {
  const job = (await (jobs[name] as unknown as () => Promise<Job<unknown, unknown>>)()) satisfies Job<
    unknown,
    unknown
  >
  try {
    return await job.run(input, {
      progress: (part, says) => port.postMessage({ part, says }),
      early: (answer) => port.postMessage({ early: answer }),
      cancelled: () => false,
    })
  } finally {
    port.close()
  }
}

export default run
