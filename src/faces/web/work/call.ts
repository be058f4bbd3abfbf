import type { JobInput, JobName, JobOutput } from '../../../jobs/jobs.ts'

export interface Order {
  id: number
  name: string
  input: unknown
}
export type Answer =
  | { id: number; part: number; says: string }
  | { id: number; early: unknown }
  | { id: number; output: unknown }
  | { id: number; error: string }

/** A job under way. `cancel` ends it at once; `done` then rejects with an AbortError. */
export interface Call<T> {
  done: Promise<T>
  cancel(): void
}

const idle: Worker[] = []
let count = 0
const newWorker = () => new Worker(new URL('./entry.ts', import.meta.url), { type: 'module' })

/** Runs a named job in a worker of its own; workers that end their job well are used again. */
export function callJob<N extends JobName>(
  name: N,
  input: JobInput<N>,
  onProgress: (part: number, says: string) => void = () => {},
  transfer: Transferable[] = [],
  onEarly: (answer: JobOutput<N>) => void = () => {},
): Call<JobOutput<N>> {
  const worker = idle.pop() ?? newWorker()
  const id = ++count
  let cancel = () => {}
  const done = new Promise<JobOutput<N>>((resolve, reject) => {
    cancel = () => {
      // a busy worker cannot read messages, so it is ended; the next job starts another
      worker.terminate()
      reject(new DOMException('called off', 'AbortError'))
    }
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (data.id !== id) return
      if ('part' in data) return onProgress(data.part, data.says)
      if ('early' in data) return onEarly(data.early as JobOutput<N>)
      worker.onmessage = null
      // the worker may soon be at another's job
      cancel = () => {}
      idle.push(worker)
      if ('error' in data) reject(new Error(data.error))
      else resolve(data.output as JobOutput<N>)
    }
    worker.onerror = (event) => reject(new Error(event.message || `the job ${name} could not be started`))
    worker.postMessage({ id, name, input } satisfies Order, transfer)
  })
  return { done, cancel: () => cancel() }
}
