/** What a long job may tell and ask while it runs. */
export interface JobContext {
  /** part done, 0 to 1, and what is being done in a few words */
  progress(part: number, says: string): void
  /** a useful answer before the last one, of the job's own output type; faces that cannot show one leave it out */
  early?(answer: unknown): void
  /** runs another named job beside this one, in a thread that ends with it; absent where there is none to spare */
  second?(name: string, input: unknown): Promise<unknown>
  /** true once nobody wants the answer any more; the job then returns early by throwing `new Cancelled()` */
  cancelled(): boolean
}

/** A named long job: plain data in, plain data out, no clock, no files, no screen. */
export interface Job<Input, Output> {
  name: string
  run(input: Input, context: JobContext): Output | Promise<Output>
}

/** Thrown by a job that stopped because it was called off. */
export class Cancelled extends Error {
  constructor() {
    super('called off')
    this.name = 'Cancelled'
  }
}

/** Keeps the types of one job; `progress` and `cancelled` reach it from a web worker or a thread alike. */
export function defineJob<Input, Output>(
  name: string,
  run: (input: Input, context: JobContext) => Output | Promise<Output>,
): Job<Input, Output> {
  return { name, run }
}
