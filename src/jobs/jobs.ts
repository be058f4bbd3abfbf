import type { Job } from './job.ts'

/** Every named job, one line each; a job's code is loaded when it is first asked for. */
export const jobs = {
  look: async () => (await import('./lookJob.ts')).look,
  'findings-apart': async () => (await import('./findingsApartJob.ts')).findingsApartJob,
  'torque-curve': async () => (await import('./torqueCurveJob.ts')).torqueCurveJob,
  'cycle-trace': async () => (await import('./torqueCurveJob.ts')).cycleTraceJob,
  'pipe-search': async () => (await import('./pipeSearchJob.ts')).pipeSearchJob,
  'stinger-search': async () => (await import('./stingerSearchJob.ts')).stingerSearchJob,
  'breath-levers': async () => (await import('./breathLeversJob.ts')).breathLeversJob,
  float: async () => (await import('./floatJob.ts')).floatJob,
  'lightest-deck': async () => (await import('./lightestDeckJob.ts')).lightestDeckJob,
  'invented-run': async () => (await import('./inventedRunJob.ts')).inventedRunJob,
  'pipe-trials': async () => (await import('./pipeTrialsJob.ts')).pipeTrialsJob,
  'design-search': async () => (await import('./designSearchJob.ts')).designSearchJob,
  deciding: async () => (await import('./decidingJob.ts')).decidingJob,
  calibrate: async () => (await import('./calibrateJob.ts')).calibrateJob,
  'run-plan': async () => (await import('./runPlanJob.ts')).runPlanJob,
  'rank-run': async () => (await import('./rankRunJob.ts')).rankRunJob,
  solid: async () => (await import('./solidJob.ts')).solidJob,
  book: async () => (await import('./bookJob.ts')).bookJob,
  'design-trials': async () => (await import('./designTrialsJob.ts')).designTrialsJob,
} as const satisfies Record<string, () => Promise<Job<never, unknown>>>

export type JobName = keyof typeof jobs
export type JobInput<N extends JobName> = Parameters<Awaited<ReturnType<(typeof jobs)[N]>>['run']>[0]
export type JobOutput<N extends JobName> = Awaited<ReturnType<Awaited<ReturnType<(typeof jobs)[N]>>['run']>>
