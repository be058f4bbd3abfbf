/**
 * One turn of the crank, from exhaust opening to exhaust opening: cylinder, crankcase, inlet, transfers, pipe and
 * box advanced together in steps that never jump over a port or the spark. Sources stand in the files of the parts.
 */
import { at, field } from '../../physics/gas/arena.ts'
import { nextStep, predictEnds, refreshWallRates, stableStep, sweep } from '../../physics/gas/duct.ts'
import { annandFlux, dilutionFactor, releaseFactor, wiebe } from './burn.ts'
import { mixR } from './caloric.ts'
import { type CycleSums, emptySums } from './cycleSums.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { createFlows, endFlow, exhaustFlow, type Flows, inletFlow, transferFlow } from './flows.ts'
import { caseVolumeOfRatio, meanPistonSpeed, pistonArea, pistonTravel, sweptVolume } from './geometry.ts'
import { warmth } from './parcels.ts'
import type { EngineState } from './state.ts'
import { advanceVessel, nozzle } from './vessel.ts'

/** What a listener may look at after every step; the object is reused. */
export interface StepView {
  angle: number
  dt: number
  /** mass flow that leaves the last tube, kg/s */
  outFlow: number
  flows: Flows
  state: EngineState
}

const turn = 2 * Math.PI
const degree = Math.PI / 180
/** longest step of the crank */
const crankCap = degree
const courant = 0.8

/** Crank angles that no step may jump over, ascending from exhaust opening to the next, and the start of burning. */
function eventsOf(s: TwoStrokeSpec): { angles: number[]; fire: number } {
  const start = s.exhaust.opens
  const after = (x: number): number => {
    const y = (x - start) % turn
    return start + (y < 0 ? y + turn : y)
  }
  const fire = after(-s.ignition + s.burn.delay)
  const angles = [s.transfers.opens, turn - s.transfers.opens, turn - start, fire, start + turn]
  if (fire + s.burn.duration < start + turn) angles.push(fire + s.burn.duration)
  if (s.inlet.kind === 'piston port') angles.push(after(-s.inlet.opens), after(s.inlet.opens))
  return { angles: [...new Set(angles)].sort((a, b) => a - b), fire }
}

/** Burning of the charge that was shut in: how much, and how hot. */
interface Charge {
  /** fresh mass at exhaust closing, kg; 0 when nothing is left to burn */
  mass: number
  /** heat freed per kg of it, J/kg */
  heat: number
  burnt: number
}

/**
 * Runs one cycle in place and returns its sums. `watch` sees every step. A run that breaks down (no positive step,
 * values that are not numbers) gives NaN as work.
 */
export function runCycle(
  s: TwoStrokeSpec,
  e: EngineState,
  rpm: number,
  watch?: (v: StepView) => void,
): CycleSums {
  const sums = emptySums()
  const omega = (turn * rpm) / 60
  const { cylinder: cyl, case: below, ducts: g } = e
  const crown = pistonArea(s.crank.bore)
  const speed = meanPistonSpeed(s.crank.stroke, rpm)
  const caseTop = caseVolumeOfRatio(s.crank, s.caseRatio) + sweptVolume(s.crank)
  const { angles, fire } = eventsOf(s)
  const perCharge =
    (s.mixture.heat * releaseFactor(s.mixture.lambda) * s.burn.completeness) / (1 + s.mixture.airFuel)
  const shuts = turn - s.exhaust.opens
  const transferShuts = turn - s.transfers.opens
  const f = createFlows()
  const view: StepView = { angle: 0, dt: 0, outFlow: 0, flows: f, state: e }
  const charge: Charge = { mass: 0, heat: 0, burnt: 0 }
  let angle = s.exhaust.opens
  let swept = crown * pistonTravel(s.crank, angle)
  let stable = stableStep(g, courant)
  let next = 0
  e.delivered = 0
  e.inPort.count = 0

  while (next < angles.length) {
    // 1. a step that is stable, at most a degree, and ends on the next event (or half-way, rather than leave a sliver)
    const left = (angles[next]! - angle) / omega
    let dt = Math.min(stable, crankCap / omega)
    const lands = dt >= left * (1 - 1e-9)
    if (lands) dt = left
    else if (dt > 0.5 * left) dt = 0.5 * left
    if (!(dt > 0)) {
      sums.work = Number.NaN
      return sums
    }
    const angleNext = lands ? angles[next]! : angle + omega * dt
    const mid = 0.5 * (angle + angleNext)
    const sweptNext = crown * pistonTravel(s.crank, angleNext)

    // 2. pipe: predict, meet the cylinder at one end and the box or the air at the other, sweep
    if (e.steps % 4 === 0) {
      refreshWallRates(g, e.sinceRates)
      e.sinceRates = 0
    }
    e.sinceRates += dt
    predictEnds(g, dt)
    exhaustFlow(s, e, mid, dt, f)
    endFlow(s, e, dt, f)
    sweep(g, dt)
    stable = nextStep(g, courant)

    // 3. the other flows, from the state at the start of the step
    transferFlow(s, e, mid, dt, s.clearance + swept, f)
    inletFlow(s, e, mid, dt, f)

    // 4. burning and heat to the walls
    const burnt =
      charge.mass > 0 && mid > fire ? burn(s, charge, (angleNext - fire) / s.burn.duration, cyl.fresh) : 0
    const freed = burnt * charge.heat
    const walls = 2 * crown + Math.PI * s.crank.bore * (swept / crown + 1e-3)
    const r = mixR(cyl.fresh / cyl.m)
    const wallHeat =
      annandFlux(s.walls.annand, s.crank.bore, speed, cyl.p, cyl.t, r, s.walls.cylinder) * walls * dt
    const caseHeat = s.walls.caseLoss * (below.t - s.walls.case) * dt

    // 5. volumes: cylinder, case, box
    const before = cyl.p
    sums.work += advanceVessel(
      cyl,
      f.transferM - f.exhaustM,
      f.transferFresh - f.exhaustFresh - burnt,
      f.transferH - f.exhaustH + freed - wallHeat,
      s.clearance + swept,
      s.clearance + sweptNext,
    )
    e.freshT *= Math.exp(warmth * Math.log(cyl.p / before))
    sums.caseWork += advanceVessel(
      below,
      f.inletM - f.transferM,
      f.inletFresh - f.transferFresh,
      f.inletH - f.transferCaseH - caseHeat,
      caseTop - swept,
      caseTop - sweptNext,
    )
    const outM = s.outlet.kind === 'box' ? advanceBox(s, e, dt, f, sums) : f.endM
    if (s.outlet.kind === 'open') sums.enthalpyOut += f.endH

    // 6. books
    sums.massIn += f.inletM
    sums.massOut += outM
    sums.freshOut += f.endFresh
    sums.transferIn += Math.max(0, f.transferFresh)
    sums.transferBack += Math.max(0, -f.transferM)
    sums.burntFresh += burnt
    sums.heatFreed += freed
    sums.heatCylinder += wallHeat
    // a cooled plug leaves heat in the duct walls and takes it along when it returns
    sums.heatCase += caseHeat + f.transferCaseH - f.transferH
    sums.enthalpyIn += f.inletH
    sums.ledger += f.exhaustH - f.exhaustPipeH
    sums.behind += (s.outlet.kind === 'box' ? e.box.p : s.air.p) * dt
    if (mid > transferShuts && mid < shuts) sums.plugging += Math.max(0, e.portP - cyl.p) * dt
    notePeaks(s, e, angleNext, sums)
    noteProbe(s, e, dt, sums)
    sums.time += dt
    sums.steps++
    e.steps++
    swept = sweptNext
    angle = angleNext
    if (watch) {
      view.angle = angle
      view.dt = dt
      view.outFlow = outM / dt
      watch(view)
    }

    // 7. events; at exhaust closing the zones mix, and what is fresh now is what will burn
    if (!lands) continue
    next++
    if (angle >= shuts - 1e-9 && sums.trapped === 0) {
      e.inPort.count = 0
      sums.trapped = cyl.m
      sums.trappedFresh = cyl.fresh
      sums.trappedP = cyl.p
      sums.trappedT = cyl.t
      sums.delivered = e.delivered
      charge.mass = s.unfired ? 0 : cyl.fresh
      charge.heat = perCharge * dilutionFactor(cyl.fresh / cyl.m)
    }
  }
  sums.behind /= sums.time
  return sums
}

/** Fresh mass that burns by y = (angle - start)/duration, kg; all that is left once y reaches 1. */
function burn(s: TwoStrokeSpec, charge: Charge, y: number, fresh: number): number {
  if (y >= 1 - 1e-9) {
    charge.mass = 0
    return fresh
  }
  const x = wiebe(y, s.burn.a, s.burn.m)
  const burnt = Math.min(fresh, charge.mass * (x - charge.burnt))
  charge.burnt = x
  return burnt
}

/** Muffler box: pipe gas in, nozzle out, heat to the air. Returns the mass that left, kg. */
function advanceBox(s: TwoStrokeSpec, e: EngineState, dt: number, f: Flows, sums: CycleSums): number {
  if (s.outlet.kind !== 'box') return f.endM
  const { gamma, r } = s.gas
  const box = e.box
  const area = s.outlet.discharge * pistonArea(s.outlet.bore)
  const cp = (gamma * r) / (gamma - 1)
  const shift = (r / (gamma - 1)) * 298.15
  const outwards = box.p >= s.air.p
  const flow = outwards
    ? nozzle(area, box.p, box.t, r, gamma, s.air.p)
    : -nozzle(area, s.air.p, s.air.t, r, gamma, box.p)
  const m = flow * dt
  const h = m * cp * (outwards ? box.t : s.air.t)
  const lost = s.outlet.loss * (box.t - s.air.t) * dt
  box.m += f.endM - m
  box.u += f.endH + f.endM * shift - h - lost
  box.p = ((gamma - 1) * box.u) / s.outlet.volume
  box.t = (box.p * s.outlet.volume) / (box.m * r)
  sums.heatBox += lost
  sums.enthalpyOut += h - m * shift
  return m
}

function notePeaks(s: TwoStrokeSpec, e: EngineState, angle: number, sums: CycleSums): void {
  if (e.cylinder.p > sums.pMax) {
    sums.pMax = e.cylinder.p
    sums.pMaxAngle = angle
  }
  if (angle < turn - s.exhaust.opens && e.portP < sums.portPMin) {
    sums.portPMin = e.portP
    sums.portPMinAngle = angle
  }
}

function noteProbe(s: TwoStrokeSpec, e: EngineState, dt: number, sums: CycleSums): void {
  const b = at(e.probe)
  const cell = e.ducts.cell
  const flow = (cell[b + field.RHO]! * cell[b + field.U]!) / cell[b + field.INV_AREA]!
  if (flow <= 0) return
  sums.probeMass += flow * dt
  sums.probeHeat += (flow * dt * cell[b + field.P]! * cell[b + field.V]!) / s.gas.r
}
