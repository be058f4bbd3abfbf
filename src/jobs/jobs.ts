import type { Job } from './job.ts'

/** Every named job, one line each; a job's code is loaded when it is first asked for. */
export const jobs = {
  look: async () => (await import('./look.ts')).look,
  'findings-apart': async () => (await import('./findingsApart.ts')).findingsApartJob,
  'torque-curve': async () => (await import('./torqueCurve.ts')).torqueCurveJob,
  'cycle-trace': async () => (await import('./torqueCurve.ts')).cycleTraceJob,
  'pipe-search': async () => (await import('./pipeSearch.ts')).pipeSearchJob,
  'stinger-search': async () => (await import('./stingerSearch.ts')).stingerSearchJob,
  'breath-levers': async () => (await import('./breathLevers.ts')).breathLeversJob,
  float: async () => (await import('./float.ts')).floatJob,
  'lightest-deck': async () => (await import('./lightestDeck.ts')).lightestDeckJob,
  'invented-run': async () => (await import('./inventedRun.ts')).inventedRunJob,
  'pipe-trials': async () => (await import('./pipeTrials.ts')).pipeTrialsJob,
} as const satisfies Record<string, () => Promise<Job<never, unknown>>>

export type JobName = keyof typeof jobs
export type JobInput<N extends JobName> = Parameters<Awaited<ReturnType<(typeof jobs)[N]>>['run']>[0]
export type JobOutput<N extends JobName> = Awaited<ReturnType<Awaited<ReturnType<(typeof jobs)[N]>>['run']>>
