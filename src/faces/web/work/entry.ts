import type { Job } from '../../../jobs/job.ts'
import { type JobName, jobs } from '../../../jobs/jobs.ts'
import type { Answer, Order } from './call.ts'

/** The worker: runs the named job it is sent, tells how far it is, and sends back what came of it. */
const scope = self as unknown as {
  onmessage: ((event: MessageEvent<Order>) => void) | null
  postMessage(answer: Answer, transfer: Transferable[]): void
}

/** A second worker of the same code for a job that can be shared; it ends with the job, or with this worker. */
function secondWorker(): { run(name: string, input: unknown): Promise<unknown>; end(): void } {
  let worker: Worker | undefined
  let count = 0
  const waiting = new Map<number, (answer: Answer) => void>()
  const run = (name: string, input: unknown) =>
    new Promise<unknown>((resolve, reject) => {
      worker ??= new Worker(self.location.href, { type: 'module' })
      worker.onmessage = ({ data }: MessageEvent<Answer>) => waiting.get(data.id)?.(data)
      worker.onerror = (event) => reject(new Error(event.message || 'a second worker could not be started'))
      const id = ++count
      waiting.set(id, (answer) => {
        if ('error' in answer) reject(new Error(answer.error))
        else if ('output' in answer) resolve(answer.output)
        else return
        waiting.delete(id)
      })
      worker.postMessage({ id, name, input } satisfies Order)
    })
  return { run, end: () => worker?.terminate() }
}

scope.onmessage = async ({ data: { id, name, input } }) => {
  const second = secondWorker()
  const say = (answer: Answer, transfer: Transferable[] = []) => scope.postMessage(answer, transfer)
  try {
    const load = jobs[name as JobName] as unknown as () => Promise<Job<unknown, unknown>>
    const { run } = await load()
    const output = await run(input, {
      progress: (part, says) => say({ id, part, says }),
      early: (answer) => say({ id, early: answer }),
      ...(navigator.hardwareConcurrency > 1 ? { second: second.run } : {}),
      // calling off ends the whole worker, so a job that runs here is always wanted
      cancelled: () => false,
    })
    say({ id, output }, buffersIn(output))
  } catch (error) {
    say({ id, error: error instanceof Error ? error.message : String(error) })
  } finally {
    second.end()
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
