import { useEffect, useSyncExternalStore } from 'react'
import type { CurveOutput } from '../../../../jobs/torqueCurveJob.ts'
import { peaksOf } from '../../../../trades/engine/torqueFromSimulation.ts'
import type { CycleTrace } from '../../../../trades/engine/trace.ts'
import type { Effect } from '../../../../whole/breath/breathEffects.ts'
import type { Craft } from '../../state/craftFile.ts'
import { type Call, callJob } from '../../work/call.ts'

/** What is known of one engine so far. Each stage replaces the one before; all of it outlives the page. */
export interface Simulation {
  /** the best curve so far */
  output?: CurveOutput
  rough: boolean
  /** turns looked at closely, by rev/min */
  traces: ReadonlyMap<number, CycleTrace>
  /** what a small move of each input does, the strongest first */
  effects?: readonly Effect[]
  running?: { says: string; part: number }
  /** called off by the user; nothing starts by itself any more */
  stopped: boolean
  error?: string
}

const nothing: Simulation = { rough: true, traces: new Map(), stopped: false }
/** simulations kept in one session; the oldest go first */
const most = 30
const known = new Map<string, Simulation>()
const calls = new Map<string, Call<unknown>>()
const listeners = new Set<() => void>()

function put(key: string, part: Partial<Simulation>): void {
  const was = known.get(key) ?? nothing
  const next: Simulation = { ...was, ...part }
  if ('running' in part && part.running === undefined) delete next.running
  known.delete(key)
  known.set(key, next)
  for (const old of known.keys()) {
    if (known.size <= most) break
    if (!calls.has(old)) known.delete(old)
  }
  for (const listener of listeners) listener()
}

/** Engines that breathe alike share a key: everything the simulation reads, nothing else. */
export function keyOf(craft: Craft, engine: number): string {
  return JSON.stringify([engine, craft.engines[engine], craft.place])
}

export interface EngineOrder {
  text: string
  tried: Readonly<Record<string, number | string | boolean>>
  engine: number
}

interface Wanted {
  /** also what each input does, and the band from the uncertain ones, which takes longest */
  band: boolean
}

/** Works an engine out, stage by stage: a rough curve, one turn at its peak, the fine curve, its band. */
async function workOut(key: string, order: EngineOrder, { band }: Wanted): Promise<void> {
  if (calls.has(key)) return
  const run = async <T>(says: string, call: (progress: (part: number) => void) => Call<T>) => {
    const mine = call((part) => calls.get(key) === mine && put(key, { running: { says, part } }))
    calls.set(key, mine)
    put(key, { running: { says, part: 0 } })
    return mine.done
  }
  const curve = (says: string, more: { dx?: number; band?: boolean }) =>
    run(says, (progress) => callJob('torque-curve', { ...order, ...more }, progress))
  try {
    let state = known.get(key) ?? nothing
    if (!state.output) {
      put(key, { output: await curve('A rough curve first', { dx: 0.02 }), rough: true })
      state = known.get(key)!
    }
    const peak = state.output?.curve && peaksOf(state.output.curve)?.power.rpm
    if (peak !== undefined && state.traces.size === 0) {
      const trace = await run('Following the waves of one turn', (progress) =>
        callJob('cycle-trace', { ...order, rpm: peak }, progress),
      )
      put(key, { traces: new Map([[peak, trace]]) })
    }
    if (state.rough && state.output?.curve)
      put(key, { output: await curve('The curve on fine cells', {}), rough: false })
    state = known.get(key)!
    if (band && state.output?.curve && !state.output.band)
      put(key, { output: await curve('How far the curve may be off, input by input', { band: true }) })
    if (band && state.output?.curve && !state.effects)
      put(key, {
        effects: await run('What each input does', (progress) => callJob('breath-levers', order, progress)),
      })
  } catch (error) {
    if ((error as Error).name !== 'AbortError') put(key, { error: (error as Error).message })
  }
  calls.delete(key)
  put(key, { running: undefined as never })
}

/** Looks closely at one more speed; a turn already looked at comes at once. */
export async function traceAt(key: string, order: EngineOrder, rpm: number): Promise<void> {
  if (known.get(key)?.traces.has(rpm)) return
  try {
    const trace = await callJob('cycle-trace', { ...order, rpm }).done
    put(key, { traces: new Map([...(known.get(key)?.traces ?? []), [rpm, trace]]) })
  } catch (error) {
    put(key, { error: (error as Error).message })
  }
}

/** Calls the work on one engine off; what is known stays. */
export function stop(key: string): void {
  calls.get(key)?.cancel()
  put(key, { stopped: true })
}

/** Starts again after a stop or a failure. */
export function resume(key: string): void {
  const { error: _, ...rest } = known.get(key) ?? nothing
  known.set(key, { ...rest, stopped: false })
  for (const listener of listeners) listener()
}

const listen = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** milliseconds of quiet before tried values are worked out */
const quiet = 250

/**
 * The simulation of one engine, worked out in a worker when it is not known yet. Work on what is only tried is called off
 * when something else is tried.
 */
export function useSimulation(
  key: string | undefined,
  order: EngineOrder | undefined,
  tried: boolean,
): Simulation | undefined {
  const state = useSyncExternalStore(listen, () => (key === undefined ? undefined : known.get(key)))
  const idle = state === undefined || (!state.stopped && state.error === undefined)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the order
  useEffect(() => {
    if (key === undefined || !order || !idle) return
    const timer = setTimeout(() => void workOut(key, order, { band: !tried }), tried ? quiet : 0)
    return () => {
      clearTimeout(timer)
      if (tried) calls.get(key)?.cancel()
    }
  }, [key, idle, tried])
  return key === undefined ? undefined : (state ?? nothing)
}
