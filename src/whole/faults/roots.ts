/**
 * Steady speeds of the craft with something wrong: which lines are then heard, and how far each fault moves them. Torque balance of shaft
 * and impeller as in the push room (shaftRoots.ts); an engine behind an open joint settles where its torque has fallen to nothing. Found
 * once a craft and kept: faults on top of each other add up in the logarithm of the speed, only dead engines and open joints are solved
 * together.
 */
import { brent } from '../../base/numerics/roots.ts'
import { scaleCurve, stretchCurve } from '../../trades/engine/curve.ts'
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import { type CraftModel, idleOf, mostOf, type Unit } from '../push/propulsionModel.ts'
import { engineTorque, impellerDrive, type Shaft, type ShaftEngine } from '../push/shaft.ts'
import { settle } from '../push/shaftRoots.ts'
import type { ModelChange, Span } from './causeTypes.ts'

/** How severe a fault may be, slight 0 to severe 1: the likelihood is the mean over them. */
export const severities = [0.1, 0.3, 0.5, 0.7, 0.9] as const

/** Engines that turn together and are heard. */
export interface Line {
  /** of the engine, rev/s */
  rotation: number
  /** it turns the impeller */
  pushes: boolean
  /** places of the engines that run in it */
  engines: readonly number[]
}

/** Which engines are dead (bits by place), and behind how many engines the shaft is open (0: it is not). */
export interface Broken {
  dead: number
  open: number
}

export const at = (span: Span | undefined, severity: number): number =>
  span === undefined ? 1 : span[0] * (span[1] / span[0]) ** severity

const changed = (e: ShaftEngine, torque: number, rotation: number): ShaftEngine => {
  const stretched = rotation === 1 ? e.curve : stretchCurve(e.curve, rotation)
  return { ...e, curve: torque === 1 ? stretched : scaleCurve(stretched, torque) }
}

/** Engine rotation at which a shaft without an impeller settles, rev/s; NaN where none of its engines runs. */
function freeRotation(shaft: Shaft): number {
  const alive = shaft.engines.filter((e) => e.running)
  if (alive.length === 0) return Number.NaN
  const end = Math.max(...alive.map((e) => e.curve.end))
  const torque = (n: number) => engineTorque(shaft, n)
  const low = Math.max(...alive.map((e) => e.curve.torquePeak.rotation))
  // full torque down to nothing: what is left over drags
  if (!(torque(low) > 0)) return Number.NaN
  const found = brent(torque, low, end, { tolerance: 1e-3 })
  return found.converged ? found.value : end
}

export class RootTable {
  private readonly units: readonly Unit[]
  private readonly speed: number
  private readonly known = new Map<string, readonly Line[]>()
  private readonly shifts = new Map<string, number>()

  /** `speed`: of the craft through the water, m/s; 0 tied up. */
  constructor(model: CraftModel, speed = 0) {
    this.units = model.units
    this.speed = speed
  }

  /** Lines heard with engines dead and the shaft open, faster than pushing first; none where nothing runs. */
  lines({ dead, open }: Broken): readonly Line[] {
    const key = `${dead}/${open}`
    const held = this.known.get(key)
    if (held) return held
    const found = this.units.length > 1 ? this.apart(dead, open) : this.together(dead, open)
    this.known.set(key, found)
    return found
  }

  /** How far a fault moves the speed of a pushing line, as ln of the ratio; `engines`: places it reaches. */
  shift(change: ModelChange, engines: readonly number[], severity: number): number {
    const key = JSON.stringify([change, engines, severity])
    const held = this.shifts.get(key)
    if (held !== undefined) return held
    const unit = this.units.length > 1 ? this.units[engines[0] ?? 0]! : this.units[0]!
    const reaches = (i: number) => this.units.length > 1 || engines.includes(i)
    const moved: Shaft = {
      ...unit.shaft,
      engines: unit.shaft.engines.map((e, i) =>
        reaches(i) ? changed(e, at(change.torque, severity), at(change.rotation, severity)) : e,
      ),
    }
    const base = this.settled(unit, unit.shaft, 1, idleOf(unit))
    const now = this.settled(unit, moved, at(change.load, severity), base)
    const shift = now > 0 && base > 0 ? Math.log(now / base) : Number.NaN
    // an engine too weak to turn its impeller dies: far below anything that is compared
    const said = Number.isFinite(shift) ? shift : -1.5
    this.shifts.set(key, said)
    return said
  }

  /** Impeller rotation, rev/s. */
  private settled(unit: Unit, shaft: Shaft, load: number, from: number): number {
    if (!shaft.engines.some((e) => e.running)) return Number.NaN
    const surplus = (n: number) =>
      impellerDrive(shaft, n) - load * jetPoint(unit.map, unit.spec, n, this.speed).T
    return settle(surplus, from, idleOf(unit), mostOf({ ...unit, shaft })).rotation
  }

  private line(unit: Unit, shaft: Shaft, places: readonly number[], pushes: boolean): Line[] {
    const alive = places.filter((_, i) => shaft.engines[i]!.running)
    if (alive.length === 0) return []
    const rotation = pushes ? this.settled(unit, shaft, 1, idleOf(unit)) * shaft.ratio : freeRotation(shaft)
    return Number.isFinite(rotation) ? [{ rotation, pushes, engines: alive }] : []
  }

  private together(dead: number, open: number): Line[] {
    const unit = this.units[0]!
    const engines = unit.shaft.engines.map((e, i) => ({
      ...e,
      running: e.running && (dead & (1 << i)) === 0,
    }))
    const part = (from: number, to: number): Shaft => ({ ...unit.shaft, engines: engines.slice(from, to) })
    const places = engines.map((_, i) => i)
    const driving = this.line(unit, part(open, engines.length), places.slice(open), true)
    return open === 0
      ? driving
      : [...this.line(unit, part(0, open), places.slice(0, open), false), ...driving]
  }

  private apart(dead: number, open: number): Line[] {
    return this.units.flatMap((unit, i) => {
      if ((dead & (1 << i)) !== 0) return []
      const free = (open & (1 << i)) !== 0
      return this.line(unit, unit.shaft, [i], !free)
    })
  }
}
