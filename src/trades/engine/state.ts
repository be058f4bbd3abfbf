/** Everything that a running engine carries from one step, cycle or speed to the next. */

import { at, createDucts, type Ducts, field, setCell } from '../../physics/gas/arena.ts'
import { createCrossing } from '../../physics/gas/boundaries.ts'
import { meshDuct } from '../../physics/gas/ductMesh.ts'
import { wallTemperature } from '../../physics/gas/walls.ts'
import { mixR } from './caloric.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { caseVolumeOfRatio, pistonArea, pistonTravel, sweptVolume } from './geometry.ts'
import { createParcels, type Parcels } from './parcels.ts'
import { createVessel, type Vessel } from './vessel.ts'

export interface EngineState {
  ducts: Ducts
  /** slot of the cell an exhaust thermometer would sit in */
  probe: number
  cylinder: Vessel
  case: Vessel
  /** muffler box; only p, t, m, u are used */
  box: Vessel
  /** fresh zone of the cylinder: temperature, and delivery so far */
  freshT: number
  delivered: number
  /** inlet mass flow and, with inertance, transfer mass flow, kg/s */
  inletFlow: number
  transferFlow: number
  /** gas in the transfer ducts, and pipe gas that came back through the exhaust port */
  inTransfer: Parcels
  inPort: Parcels
  /** boundary pressures of the step before */
  portP: number
  endP: number
  readonly port: Float64Array
  readonly end: Float64Array
  /** steps taken, for what is not refreshed at every one */
  steps: number
  /** time since the wall rates of the pipe were found, s */
  sinceRates: number
}

/** A sane start: burnt gas at 4 bar as the exhaust opens, warm case, hot pipe. dx: cell length wanted, m. */
export function createState(s: TwoStrokeSpec, dx: number): EngineState {
  const shape = meshDuct(s.pipe, dx, { heatFactor: s.heatFactor })
  const ducts = createDucts([shape], s.gas.gamma, s.gas.r)
  const n = shape.cellArea.length
  for (let c = 0; c < n; c++) {
    const x = (c + 0.5) / n
    const p = 1.05 * s.air.p
    const slot = ducts.first[0]! + c
    setCell(ducts, slot, p / (s.gas.r * (900 - 450 * x)), 0, p, 0)
    ducts.cell[at(slot) + field.WALL] = wallTemperature(250, 250 * (950 - 150 * x), s.outside, 600)
  }
  const area = pistonArea(s.crank.bore)
  const vc = s.clearance + area * pistonTravel(s.crank, s.exhaust.opens)
  const vcc =
    caseVolumeOfRatio(s.crank, s.caseRatio) +
    sweptVolume(s.crank) -
    area * pistonTravel(s.crank, s.exhaust.opens)
  return {
    ducts,
    probe: ducts.first[0]! + Math.min(n - 1, Math.round(0.12 / shape.dx)),
    cylinder: createVessel(4e5, 1500, 0, vc),
    case: createVessel(1.25e5, 335, 1, vcc),
    box: boxVessel(s),
    freshT: 400,
    delivered: 0,
    inletFlow: 0,
    transferFlow: 0,
    inTransfer: createParcels(),
    inPort: createParcels(),
    portP: s.air.p,
    endP: s.air.p,
    port: createCrossing(),
    end: createCrossing(),
    steps: 0,
    sinceRates: 0,
  }
}

/** the box holds pipe gas: u = m c_v t */
function boxVessel(s: TwoStrokeSpec): Vessel {
  if (s.outlet.kind !== 'box') return { m: 0, u: 0, fresh: 0, p: s.air.p, t: s.air.t }
  const p = 1.02 * s.air.p
  const t = 650
  const m = (p * s.outlet.volume) / (s.gas.r * t)
  return { m, u: (m * s.gas.r * t) / (s.gas.gamma - 1), fresh: 0, p, t }
}

/**
 * A start for one engine from the settled state of a similar one (a changed pipe, a finer grid): volumes as they were,
 * the pipe's gas and walls stretched to the new length. Far fewer cycles than a cold start.
 */
export function adoptState(s: TwoStrokeSpec, dx: number, from: EngineState): EngineState {
  const e = createState(s, dx)
  const [g, h] = [e.ducts, from.ducts]
  const n = g.last[0]! - g.first[0]! + 1
  const m = h.last[0]! - h.first[0]! + 1
  const read = (c: number, f: number): number => {
    const x = Math.min(m - 1, Math.max(0, ((c + 0.5) / n) * m - 0.5))
    const i = Math.min(m - 2, Math.floor(x))
    const a = h.cell[at(h.first[0]! + i) + f]!
    const b = h.cell[at(h.first[0]! + i + 1) + f]!
    return a + (b - a) * (x - i)
  }
  for (let c = 0; c < n; c++) {
    const slot = g.first[0]! + c
    setCell(g, slot, read(c, field.RHO), read(c, field.U), read(c, field.P), read(c, field.Y))
    g.cell[at(slot) + field.WALL] = read(c, field.WALL)
  }
  e.cylinder = { ...from.cylinder }
  e.case = { ...from.case }
  if (s.outlet.kind === 'box' && from.box.m > 0) {
    // the box keeps its pressure and temperature, whatever its size was
    const m0 = (from.box.p * s.outlet.volume) / (s.gas.r * from.box.t)
    e.box = { ...from.box, m: m0, u: (from.box.p * s.outlet.volume) / (s.gas.gamma - 1) }
  }
  e.freshT = from.freshT
  e.inletFlow = from.inletFlow
  e.transferFlow = from.transferFlow
  e.portP = from.portP
  e.endP = from.endP
  const crown = pistonArea(s.crank.bore)
  rescale(e.cylinder, s.clearance + crown * pistonTravel(s.crank, s.exhaust.opens))
  rescale(
    e.case,
    caseVolumeOfRatio(s.crank, s.caseRatio) +
      sweptVolume(s.crank) -
      crown * pistonTravel(s.crank, s.exhaust.opens),
  )
  return e
}

/** keeps pressure and temperature of a vessel whose volume was changed */
function rescale(v: Vessel, volume: number): void {
  const m = (v.p * volume) / (mixR(v.fresh / v.m) * v.t)
  const k = m / v.m
  v.m *= k
  v.u *= k
  v.fresh *= k
}
