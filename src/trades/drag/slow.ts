/**
 * Drag before the planing theory speaks: friction with a form factor, the pull of the immersed transom, and waves, up to Fv = 1;
 * the Mercier–Savitsky regression from there.
 * Sources: ITTC (1957) line; J. Holtrop and G. G. J. Mennen (1982), An approximate power prediction method, International Shipbuilding
 * Progress 29, immersed transom (from memory); preplaning.ts; michell.ts. The wave tail is fixed by the regression's value and slope
 * at Fv = 1 (judgement), or follows the thin-ship integral's shape.
 */

import { type Cubic, cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import type { RestForm } from '../../hull/afloat/restForm.ts'
import { ittc57 } from '../../physics/fluid/friction.ts'
import { gravity } from '../../physics/fluid/water.ts'
import { halfBreadthAt, stationsOf } from './dragForm.ts'
import { type Conditions, type HullSpec, volumetricFroude } from './hullSpec.ts'
import { closeTransom, michell, type Offsets } from './michell.ts'
import { type Preplaning, preparePreplaning, preplaningNodes, preplaningRatio } from './preplaning.ts'

/** How wave drag falls off below Fv = 1. */
export type WaveTail = 'power' | 'thin ship'

export interface SlowModel {
  preplaning: Preplaning
  /** N */
  weight: number
  density: number
  kinematicViscosity: number
  roughness: number
  formFactor: number
  /** m², bottom and sides at rest less the intake's opening */
  wetted: number
  /** m², immersed transom at rest, and m, the length its Froude number is on */
  transom: number
  transomLength: number
  /** N, wave drag at Fv = 1 */
  waves: number
  /** power of Fv it falls with */
  power: number
  /** true when the regression, outside its fit, fell below what friction and the least waves take, and that stands in */
  floored: boolean
  /** thin-ship shape over Fv, 1 at Fv = 1 */
  shape?: Cubic
}

const shapeFrom = 0.35

/** One-off work for slow drag: the hull at rest, its weight (N) and water. */
export function prepareSlow(
  spec: HullSpec,
  form: RestForm,
  weight: number,
  conditions: Conditions,
  tail: WaveTail = 'power',
): SlowModel {
  const breadth = form.beam * (1 + form.waterplane / (form.length * form.beam))
  const transom = form.transomRatio * form.section
  const m: SlowModel = {
    preplaning: preparePreplaning(form),
    weight,
    density: conditions.density,
    kinematicViscosity: conditions.kinematicViscosity,
    roughness: spec.roughness ?? 4e-4,
    formFactor: spec.formFactor ?? 1.2,
    wetted: Math.max(0, form.wettedSurface - (spec.intake?.area ?? 0)),
    transom,
    transomLength: transom / breadth,
    waves: 0,
    power: 5,
    floored: false,
  }
  const speedAt = (Fv: number) => Fv * Math.sqrt(gravity * Math.cbrt(form.volume))
  const wavesAt = (Fv: number) => {
    const speed = speedAt(Fv)
    return regressionDrag(m, Fv, speed) - m.formFactor * restFriction(m, speed) - transomDrag(m, speed)
  }
  m.floored = preplaningNodes.some((Fv) => regressionDrag(m, Fv, speedAt(Fv)) <= leastDrag(m, speedAt(Fv)))
  // a hull outside the fit may leave nothing for waves: then half a per cent of the weight stands in
  m.waves = Math.max(0.005 * weight, wavesAt(1))
  m.power = Math.min(8, Math.max(4, Math.log(Math.max(wavesAt(1.1), 1e-9) / m.waves) / Math.log(1.1)))
  if (tail === 'thin ship') m.shape = thinShape(spec, form, conditions.density)
  return m
}

/** The least a hull takes above Fv 1, N: friction, and waves of 2 % of the weight (judgement; hulls inside the fit take 4 % and more). */
function leastDrag(m: SlowModel, speed: number): number {
  return m.formFactor * restFriction(m, speed) + 0.02 * m.weight
}

/** N, the regression's drag, never below the least. */
function regressionDrag(m: SlowModel, Fv: number, speed: number): number {
  const said = m.weight * preplaningRatio(m.preplaning, Fv, m.kinematicViscosity, m.roughness)
  return Math.max(said, leastDrag(m, speed))
}

/** N, friction of the bottom as wetted at rest, without form factor; speed m/s. */
function restFriction(m: SlowModel, speed: number): number {
  const Re = (speed * m.preplaning.form.length) / m.kinematicViscosity
  return 0.5 * m.density * speed * speed * m.wetted * (ittc57(Re) + m.roughness)
}

/** N, pull of a transom that drags its wake; nil once the water leaves it clean. */
function transomDrag(m: SlowModel, speed: number): number {
  if (!(m.transomLength > 0)) return 0
  const F = speed / Math.sqrt(2 * gravity * m.transomLength)
  return 0.5 * m.density * speed * speed * m.transom * 0.2 * Math.max(0, 1 - 0.2 * F)
}

/** Wave drag at Fv ≤ 1 over that at Fv = 1. */
function waveShare(m: SlowModel, Fv: number): number {
  if (!m.shape) return Fv ** m.power
  return Fv < shapeFrom ? cubicAt(m.shape, shapeFrom) * (Fv / shapeFrom) ** 6 : cubicAt(m.shape, Fv)
}

/** Hull drag (no air, no appendages) of a well-trimmed hull below the plane at speed m/s: friction and the rest, N. */
export function slowDrag(m: SlowModel, speed: number): { friction: number; pressure: number } {
  const Fv = volumetricFroude(speed, m.preplaning.form.volume)
  const friction = restFriction(m, speed)
  if (Fv < 1) {
    const pressure = (m.formFactor - 1) * friction + transomDrag(m, speed) + m.waves * waveShare(m, Fv)
    return { friction, pressure }
  }
  return { friction, pressure: regressionDrag(m, Fv, speed) - friction }
}

/** Michell's shape over Fv from 0.35 to 1, scaled to 1 at the end. */
function thinShape(spec: HullSpec, form: RestForm, density: number): Cubic {
  const hull = closeTransom(offsetsAtRest(spec, form), 0.75 * form.beam)
  const nodes = Array.from({ length: 14 }, (_, i) => shapeFrom + ((1 - shapeFrom) * i) / 13)
  const values = nodes.map((Fv) =>
    michell(hull, Fv * Math.sqrt(gravity * Math.cbrt(form.volume)), density, 160, 4),
  )
  const end = values[values.length - 1]!
  return pchip(
    nodes,
    values.map((v) => v / end),
  )
}

/** Half-breadths of the hull under water as it lies at rest. */
function offsetsAtRest(spec: HullSpec, form: RestForm, nz = 8): Offsets {
  const s = stationsOf(spec)
  const slope = Math.tan(form.trim)
  // every other station as far as the keel is under water, then the point where it comes out
  const wet = [...s.x.keys()].filter((i) => i % 2 === 0 && s.x[i]! < form.length - 1e-6)
  const x = Float64Array.from([...wet.map((i) => s.x[i]!), form.length])
  const z = Float64Array.from({ length: nz + 1 }, (_, k) => (-form.draft * k) / nz)
  const half = new Float64Array(x.length * z.length)
  wet.forEach((i, j) => {
    const level = form.waterAtTransom - slope * s.x[i]!
    for (let k = 0; k <= nz; k++) half[j * (nz + 1) + k] = halfBreadthAt(s, i, level + z[k]!)
  })
  return { x, z, half }
}
