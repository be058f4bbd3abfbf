/**
 * How long until the air intake goes under: water comes in through holes, the craft settles under it, the heads change.
 * The water is carried as added weight with a free surface (Principles of Naval Architecture vol. I, ch. III); hole flow as in tests.ts.
 */

import { type FloatingLoad, floaterOf } from '../../hull/afloat/load.ts'
import { type Attitude, settle } from '../../hull/afloat/settle.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import type { Mesh } from '../../physics/solid/mesh.ts'
import { heightAbove } from '../../physics/solid/waterFrame.ts'
import type { Opening } from './openingHeights.ts'
import { holeFlow } from './tests.ts'

export interface LeakInput {
  /** the craft afloat and dry */
  load: FloatingLoad
  /** inside of the space that fills, closed mesh */
  space: Mesh
  /** fraction of that space water can fill */
  permeability: number
  /** holes below or above water: place and area */
  holes: readonly { name: string; at: readonly [number, number, number]; area: number }[]
  /** what is watched; those with an area also let water in once they are under */
  openings: readonly Opening[]
  /** the dry resting place when already known */
  start?: Attitude
  /** steps to fill the space; 120 when left out */
  steps?: number
}

export interface LeakRun {
  /** s, m³ of water on board */
  time: number[]
  water: number[]
  heel: number[]
  trim: number[]
  /** m, lowest watched opening above water */
  lowest: number[]
  /** first opening under, and when; undefined when none goes under */
  under?: { name: string; time: number }
  /** how it ends */
  end: 'sinks' | 'fills' | 'no more comes in' | 'goes over'
  endTime: number
}

/** Runs the leak until it ends. `cancelled` true stops early. */
export function leakRun(input: LeakInput, cancelled?: () => boolean): LeakRun {
  const capacity = solidProperties(input.space).volume
  const steps = input.steps ?? 120
  const rho = input.load.density
  const p = input.permeability
  const run: LeakRun = { time: [], water: [], heel: [], trim: [], lowest: [], end: 'fills', endTime: 0 }
  // water fills p of the space: as a liquid, the whole space filled with p times its density
  const f = floaterOf({
    ...input.load,
    liquids: [
      ...(input.load.liquids ?? []),
      { name: 'leak', mesh: input.space, volume: 0, density: rho * p },
    ],
  })
  const tank = f.tanks.at(-1)!
  let at = input.start
  let time = 0
  let flowBefore = Number.NaN
  const keep = (t: number, water: number, lowest: number) => {
    run.time.push(t)
    run.water.push(water)
    run.heel.push(at!.heel)
    run.trim.push(at!.trim)
    run.lowest.push(lowest)
  }
  for (let i = 0; i < steps; i++) {
    tank.volume = (capacity * i) / steps
    const rest = settle(f, at, { tolerance: 1e-7 })
    if (rest.deficit >= 0) return { ...run, end: 'sinks', endTime: time }
    if (!rest.converged || Math.abs(rest.value.heel) > 1.4) return { ...run, end: 'goes over', endTime: time }
    at = rest.value
    const frame = rest.state.frame
    const inside = tank.volume > 0 ? tank.level : Number.NEGATIVE_INFINITY
    let flow = 0
    const into = (place: readonly [number, number, number], area: number) => {
      const depth = -heightAbove(frame, at!.h, ...place)
      const within = inside - heightAbove(frame, 0, ...place)
      flow +=
        holeFlow(area, Math.max(0, depth) - Math.max(0, within)) -
        holeFlow(area, Math.max(0, within) - Math.max(0, depth))
    }
    for (const h of input.holes) into(h.at, h.area)
    let lowest = Infinity
    for (const o of input.openings) {
      const height = heightAbove(frame, at.h, ...o.at)
      if (o.area > 0 && height < 0) into(o.at, o.area)
      if (o.kind !== 'shaft seal') lowest = Math.min(lowest, height)
    }
    if (i > 0) {
      const filled = (capacity * p) / steps
      if (!(flow > 1e-9)) {
        // the head, and with it flow times its own size, falls evenly to nothing within this step
        const ran = flowBefore ** 2 / (flowBefore ** 2 + flow ** 2)
        const last = run.water.at(-1)!
        keep(time + (2 * ran * filled) / flowBefore, last + ran * filled, lowest)
        return { ...run, end: 'no more comes in', endTime: run.time.at(-1)! }
      }
      // exact where the head falls or rises evenly with the water that came in
      time += (2 * filled) / (flow + flowBefore)
    } else if (!(flow > 1e-9)) return { ...run, end: 'no more comes in', endTime: 0 }
    const first =
      run.under === undefined
        ? firstUnder(input.openings, (o) => heightAbove(frame, at!.h, ...o.at))
        : undefined
    if (first !== undefined) run.under = { name: first.name, time: i > 0 ? crossing(run, lowest, time) : 0 }
    flowBefore = flow
    keep(time, tank.volume * p, lowest)
    if (cancelled?.()) break
  }
  run.endTime = time
  return run
}

function firstUnder(openings: readonly Opening[], height: (o: Opening) => number): Opening | undefined {
  return openings
    .filter((o) => o.kind !== 'shaft seal' && height(o) <= 0)
    .sort((a, b) => height(a) - height(b))[0]
}

/** When the lowest opening crossed the water, between the last stored look and this one. */
function crossing(run: LeakRun, lowest: number, time: number): number {
  const before = run.lowest.at(-1)!
  const then = run.time.at(-1)!
  return before > lowest ? then + ((time - then) * before) / (before - lowest) : time
}
