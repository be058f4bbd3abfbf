import { isMainThread, type MessagePort, parentPort, workerData } from 'node:worker_threads'
import type { Job } from '../../jobs/job.ts'
import { type JobName, jobs } from '../../jobs/jobs.ts'

interface Order {
  name: JobName
  input: unknown
  /** where progress goes */
  port: MessagePort
}

const find = (name: JobName) => (jobs[name] as unknown as () => Promise<Job<unknown, unknown>>)()

/** Runs one named job in a worker thread; calling it off ends the thread. */
export default async function run({ name, input, port }: Order): Promise<unknown> {
  const job = await find(name)
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

// a thread that was started for one job, with nobody to tell how far it is
const single = workerData as Partial<Order> | null
if (!isMainThread && single?.name !== undefined) {
  const job = await find(single.name)
  parentPort?.postMessage(
    await job.run(single.input, { progress: () => {}, early: () => {}, cancelled: () => false }),
  )
}
