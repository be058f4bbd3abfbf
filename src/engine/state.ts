/** Everything that a running engine carries from one step, cycle or speed to the next. */
import { createCrossing } from '../gas/boundaries.ts'
import { at, createDucts, type Ducts, field, setCell } from '../gas/duct.ts'
import { meshDuct } from '../gas/mesh.ts'
import { caseVolumeOfRatio, pistonArea, pistonTravel, sweptVolume } from './geometry.ts'
import { createParcels, type Parcels } from './parcels.ts'
import type { TwoStrokeSpec } from './spec.ts'
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
    ducts.cell[at(slot) + field.WALL] = Math.max(s.outside.t, 500 - 150 * x)
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

/** A copy that shares nothing with the original. */
export function cloneState(e: EngineState): EngineState {
  const g = e.ducts
  const arena = g.arena.slice()
  const move = (v: Float64Array): Float64Array =>
    new Float64Array(arena.buffer, v.byteOffset - g.arena.byteOffset, v.length)
  const copyParcels = (p: Parcels): Parcels => ({ count: p.count, data: p.data.slice() })
  return {
    ...e,
    ducts: {
      ...g,
      arena,
      cell: move(g.cell),
      dx: move(g.dx),
      roughFriction: move(g.roughFriction),
      heatFactor: move(g.heatFactor),
      fastest: move(g.fastest),
      end: move(g.end),
      edge: move(g.edge),
    },
    cylinder: { ...e.cylinder },
    case: { ...e.case },
    box: { ...e.box },
    inTransfer: copyParcels(e.inTransfer),
    inPort: copyParcels(e.inPort),
    port: e.port.slice(),
    end: e.end.slice(),
  }
}
