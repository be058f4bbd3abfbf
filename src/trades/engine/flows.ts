/**
 * What passes between the volumes of the engine in one step. Each function reads the state as it stands, moves the
 * memories that belong to it (parcels, columns) and leaves its amounts in `f`; nothing is allocated.
 * Scavenging in two zones at one pressure and the S-curve: G. P. Blair, Design and Simulation of Two-Stroke Engines
 * (1996), ch. 3. Ports as steady nozzles: R. S. Benson (1982).
 */
import { crossed, openEnd, portEnd } from '../../physics/gas/boundaries.ts'
import { burntR, freshR, mixCv, mixEnthalpy, mixR } from './caloric.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { pistonArea } from './geometry.ts'
import { advanceColumn, reedArea } from './inletFlow.ts'
import { pop, push, topT, topY } from './parcels.ts'
import { roofDepth, skirtDepth, windowArea } from './portAreas.ts'
import { leavingFresh } from './scavenge.ts'
import type { EngineState } from './state.ts'
import { nozzle } from './vessel.ts'

/** Amounts of one step: kg and J, from cylinder to pipe, from case to cylinder, from air to case, from pipe outwards. */
export interface Flows {
  exhaustM: number
  exhaustFresh: number
  /** enthalpy in the cylinder's terms, and in the pipe's */
  exhaustH: number
  exhaustPipeH: number
  transferM: number
  transferFresh: number
  transferH: number
  /** what the case loses for it; differs while the duct walls hold heat */
  transferCaseH: number
  inletM: number
  inletFresh: number
  inletH: number
  endM: number
  endFresh: number
  endH: number
}

export const createFlows = (): Flows => ({
  exhaustM: 0,
  exhaustFresh: 0,
  exhaustH: 0,
  exhaustPipeH: 0,
  transferM: 0,
  transferFresh: 0,
  transferH: 0,
  transferCaseH: 0,
  inletM: 0,
  inletFresh: 0,
  inletH: 0,
  endM: 0,
  endFresh: 0,
  endH: 0,
})

/** Datum of the cylinder's heat contents, K; the pipe's enthalpies are counted from it too. */
const datum = 298.15

/** Exhaust: the port at crank angle `mid`, with the cylinder on one side and the pipe's first cell on the other. */
export function exhaustFlow(s: TwoStrokeSpec, e: EngineState, mid: number, dt: number, f: Flows): void {
  const cyl = e.cylinder
  const depth = roofDepth(s.crank, s.exhaust.opens, s.exhaust.height, mid)
  const throat = depth > 0 ? s.exhaust.discharge * windowArea(s.exhaust, depth) : 0
  const y = cyl.fresh / cyl.m
  let t = cyl.t
  let outY = y
  if (e.inPort.count > 0) {
    // pipe gas that came back lies at the port and leaves first
    t = topT(e.inPort, cyl.p)
    outY = topY(e.inPort)
  } else if (e.delivered > 0) {
    // two zones at one pressure; the scavenging curve says how much of the leaving volume is fresh
    const burnt = cyl.m - cyl.fresh
    let burntT = e.freshT
    if (burnt > 1e-9 * cyl.m) {
      const rest = (cyl.m * mixR(y) * cyl.t - cyl.fresh * freshR * e.freshT) / (burnt * burntR)
      burntT = Math.min(2200, Math.max(e.freshT, rest))
    }
    const part = cyl.fresh > 0 ? leavingFresh(s.transfers.scavenging, e.delivered) : 0
    const fresh = part / (freshR * e.freshT)
    const old = (1 - part) / (burntR * burntT)
    outY = fresh / (fresh + old)
    t = (outY * freshR * e.freshT + (1 - outY) * burntR * burntT) / mixR(outY)
  }
  const r = mixR(outY)
  portEnd(e.ducts, 0, 0, throat, cyl.p, t, 1 + r / mixCv(t, outY), r, outY, e.portP, e.port)
  e.portP = e.port[crossed.p]!
  const m = e.port[crossed.mass]! * dt
  f.exhaustM = m
  f.exhaustFresh = e.port[crossed.fresh]! * dt
  f.exhaustPipeH = e.port[crossed.energy]! * dt - m * (s.gas.r / (s.gas.gamma - 1)) * datum
  if (m < 0) {
    const t0 = e.port[crossed.t0]!
    f.exhaustH = m * mixEnthalpy(t0, f.exhaustFresh / m)
    push(e.inPort, -m, t0, f.exhaustFresh / m, cyl.p)
  } else {
    f.exhaustH = m * mixEnthalpy(t, outY)
    pop(e.inPort, m)
  }
}

/** Far end of the pipe: the air, or the muffler box. */
export function endFlow(s: TwoStrokeSpec, e: EngineState, dt: number, f: Flows): void {
  const boxed = s.outlet.kind === 'box'
  openEnd(e.ducts, 0, 1, boxed ? e.box.p : s.air.p, boxed ? e.box.t : s.air.t, 0, e.endP, e.end)
  e.endP = e.end[crossed.p]!
  f.endM = -e.end[crossed.mass]! * dt
  f.endFresh = -e.end[crossed.fresh]! * dt
  f.endH = -e.end[crossed.energy]! * dt - f.endM * (s.gas.r / (s.gas.gamma - 1)) * datum
}

/** Transfers, with the plug of gas that was pushed back coming out first. `volume`: of the cylinder, m3. */
export function transferFlow(
  s: TwoStrokeSpec,
  e: EngineState,
  mid: number,
  dt: number,
  volume: number,
  f: Flows,
): void {
  const { cylinder: cyl, case: below } = e
  const port = s.transfers
  const depth = roofDepth(s.crank, port.opens, port.height, mid)
  const area = depth > 0 ? port.discharge * port.narrowing * windowArea(port, depth) : 0
  f.transferM = 0
  f.transferFresh = 0
  f.transferH = 0
  f.transferCaseH = 0
  if (area < 1e-9) {
    e.transferFlow = 0
    return
  }
  const plugged = e.inTransfer.count > 0
  const giveT = plugged ? topT(e.inTransfer, below.p) : below.t
  const giveY = plugged ? topY(e.inTransfer) : below.fresh / below.m
  const moving = port.inertance && e.transferFlow !== 0
  const into = moving ? e.transferFlow > 0 : below.p >= cyl.p
  const upT = into ? giveT : cyl.t
  const upY = into ? giveY : cyl.fresh / cyl.m
  const upP = into ? below.p : cyl.p
  const r = mixR(upY)
  const gamma = 1 + r / mixCv(upT, upY)
  if (port.inertance) {
    // the columns in the ducts resist being hurried, and no port passes more than its choked flow
    const most = nozzle(area, upP, upT, r, gamma, 0)
    const rho = upP / (r * upT)
    const flow = advanceColumn(
      e.transferFlow,
      dt,
      port.ductArea,
      port.ductLength,
      below.p - cyl.p,
      rho,
      1e3,
      area,
    )
    e.transferFlow = Math.max(-most, Math.min(most, flow))
  } else {
    const flow = nozzle(area, upP, upT, r, gamma, into ? cyl.p : below.p)
    e.transferFlow = into ? flow : -flow
  }
  const m = e.transferFlow * dt
  f.transferM = m
  if (m > 0) {
    const added = m * giveY
    f.transferFresh = added
    f.transferH = m * mixEnthalpy(giveT, giveY)
    f.transferCaseH = port.plug === 'cooled' ? m * mixEnthalpy(below.t, giveY) : f.transferH
    pop(e.inTransfer, m)
    // only the fresh part counts as delivery: returning burnt gas must not pass for charge
    const was = e.delivered > 0 ? cyl.fresh : 0
    if (was + added > 1e-15) e.freshT = (was * e.freshT + added * giveT) / (was + added)
    e.delivered += (added * freshR * giveT) / (cyl.p * volume)
  } else if (m < 0) {
    f.transferFresh = m * upY
    f.transferH = m * mixEnthalpy(cyl.t, upY)
    f.transferCaseH = port.plug === 'cooled' ? m * mixEnthalpy(below.t, upY) : f.transferH
    push(e.inTransfer, -m, cyl.t, upY, below.p)
  }
}

/** Inlet: reed or piston port, behind the carburettor and the column in the tract. */
export function inletFlow(s: TwoStrokeSpec, e: EngineState, mid: number, dt: number, f: Flows): void {
  const below = e.case
  const drop = s.air.p - below.p
  const inlet = s.inlet
  let valve = 0
  if (inlet.kind === 'reed') valve = reedArea(inlet.area, inlet.crack, inlet.full, drop)
  else {
    const depth = skirtDepth(s.crank, inlet.opens, inlet.height, mid)
    valve = depth > 0 ? inlet.discharge * windowArea(inlet, depth) : 0
  }
  const carb = s.carburettor.discharge * pistonArea(s.carburettor.bore)
  const rho = s.air.p / (freshR * s.air.mixtureT)
  let flow = advanceColumn(e.inletFlow, dt, s.tract.area, s.tract.length, drop, rho, carb, valve)
  if (inlet.kind === 'reed' && flow < 0) flow = 0
  e.inletFlow = flow
  const m = flow * dt
  f.inletM = m
  // spit-back carries the case's own gas out; what comes in is mixture
  const y = below.fresh / below.m
  f.inletFresh = m >= 0 ? m : m * y
  f.inletH = m >= 0 ? m * mixEnthalpy(s.air.mixtureT, 1) : m * mixEnthalpy(below.t, y)
}
