import type { Job } from './job.ts'

/** Every named job, one line each; a job's code is loaded when it is first asked for. */
export const jobs = {
  balance: async () => (await import('./balanceJob.ts')).balanceJob,
} as const satisfies Record<string, () => Promise<Job<never, unknown>>>

export type JobName = keyof typeof jobs
export type JobInput<N extends JobName> =
  Awaited<ReturnType<(typeof jobs)[N]>> extends Job<infer I, unknown> ? I : never
export type JobOutput<N extends JobName> =
  Awaited<ReturnType<(typeof jobs)[N]>> extends Job<never, infer O> ? O : never
