/** The true craft of a simulated session: its steady states by the torque balance, with what is really wrong on it. */
import type { Craft } from '../../src/craft/index.ts'
import { scaleCurve, stretchCurve } from '../../src/trades/engine/curve.ts'
import { jetPoint } from '../../src/trades/jet/pumpMap.ts'
import type { Balance } from '../../src/whole/push/balanceTypes.ts'
import { MapStore, modelFromCraft } from '../../src/whole/push/craftModel.ts'
import { type CraftModel, idleOf, mostOf, type Unit } from '../../src/whole/push/propulsionModel.ts'
import { engineTorque, impellerDrive, type Shaft } from '../../src/whole/push/shaft.ts'
import { settle } from '../../src/whole/push/shaftRoots.ts'
import type { Hidden } from './hidden.ts'

export interface Bench {
  name: string
  craft: Craft
  balance: Balance
  model: CraftModel
}

export const benchOf = (name: string, craft: Craft, balance: Balance): Bench => ({
  name,
  craft,
  balance,
  model: modelFromCraft(craft, new MapStore()),
})

/** Speeds heard, rev/s, and the thrust of what pushes, N. */
export interface Steady {
  lines: number[]
  pushing: number
  thrust: number
}

/** By what the craft differs from its file: nobody knows. */
export interface True {
  torque: number
  load: number
  thrust: number
  drag: number
}

function shaftWith(shaft: Shaft, h: Hidden, t: True, from: number, to: number): Shaft {
  return {
    ...shaft,
    engines: shaft.engines.slice(from, to).map((e, i) => {
      const s = h.engines[from + i]!
      const curve = s.rotation === 1 ? e.curve : stretchCurve(e.curve, s.rotation)
      return {
        ...e,
        running: e.running && s.fires,
        curve: scaleCurve(curve, Math.max(0.05, s.torque * t.torque)),
      }
    }),
  }
}

function freeSpeed(shaft: Shaft): number {
  const alive = shaft.engines.filter((e) => e.running)
  if (alive.length === 0) return Number.NaN
  let n = Math.max(...alive.map((e) => e.curve.end))
  while (n > 20 && engineTorque(shaft, n) < 0.02) n *= 0.995
  return n
}

function pushes(unit: Unit, shaft: Shaft, h: Hidden, t: True): { rotation: number; thrust: number } {
  if (!shaft.engines.some((e) => e.running)) return { rotation: Number.NaN, thrust: 0 }
  const load = h.load * t.load
  const surplus = (n: number) => impellerDrive(shaft, n) - load * jetPoint(unit.map, unit.spec, n, 0).T
  const n = settle(surplus, idleOf(unit), idleOf(unit), mostOf({ ...unit, shaft })).rotation
  return {
    rotation: n * shaft.ratio,
    thrust: n > 0 ? h.thrust * t.thrust * jetPoint(unit.map, unit.spec, n, 0).F : 0,
  }
}

export function steadyOf({ model, craft }: Bench, h: Hidden, t: True): Steady {
  const unit = model.units[0]!
  const all = craft.engines.length
  const driving = pushes(unit, shaftWith(unit.shaft, h, t, h.open, all), h, t)
  const free = h.open > 0 ? freeSpeed(shaftWith(unit.shaft, h, t, 0, h.open)) : Number.NaN
  const lines = [free, driving.rotation].filter((n) => n > 5)
  return {
    lines,
    pushing: driving.rotation > 5 ? driving.rotation : Number.NaN,
    thrust: driving.rotation > 5 ? driving.thrust : 0,
  }
}
