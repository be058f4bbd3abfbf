import type { Job } from '../../jobs/job.ts'
import { type JobName, jobs } from '../../jobs/jobs.ts'
import type { Answer, Order } from './call.ts'

/** The worker: runs the named job it is sent, tells how far it is, and sends back what came of it. */
const scope = self as unknown as {
  onmessage: ((event: MessageEvent<Order>) => void) | null
  postMessage(answer: Answer, transfer: Transferable[]): void
}

scope.onmessage = async ({ data: { id, name, input } }) => {
  const say = (answer: Answer, transfer: Transferable[] = []) => scope.postMessage(answer, transfer)
  try {
    const load = jobs[name as JobName] as unknown as () => Promise<Job<unknown, unknown>>
    const { run } = await load()
    const output = await run(input, {
      progress: (part, says) => say({ id, part, says }),
      early: (answer) => say({ id, early: answer }),
      // calling off ends the whole worker, so a job that runs here is always wanted
      cancelled: () => false,
    })
    say({ id, output }, buffersIn(output))
  } catch (error) {
    say({ id, error: error instanceof Error ? error.message : String(error) })
  }
}

/** Buffers of the large arrays in an answer; they are handed over, not copied. */
function buffersIn(value: unknown, found = new Set<ArrayBuffer>(), depth = 0): Transferable[] {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer && value.byteLength > 10_000) found.add(value.buffer)
  } else if (value && typeof value === 'object' && depth < 4)
    for (const part of Object.values(value)) buffersIn(part, found, depth + 1)
  return [...found]
}
