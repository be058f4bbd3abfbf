/**
 * From the sums of one cycle to what a builder reads: torque, power, breathing, fuel, heat, and the books that tell
 * how far to trust it. Definitions: SAE J604 terms as in Heywood (1988), ch. 2 and 6 (mean pressures, delivery ratio,
 * trapping, scavenging and charging efficiency); two-stroke power uses every revolution.
 */
import { frictionPressure } from './burn.ts'
import type { CycleSums } from './cycleSums.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { sweptVolume } from './geometry.ts'

/** Gas constant of dry air, J/(kg K). */
const airR = 287.05

/** One steady running point. SI: Pa, K, N m, W, kg/s, kg/J; rpm in rev/min. */
export interface CyclePoint {
  rpm: number
  torque: number
  power: number
  /** mean pressures: brake, indicated, case pumping loss, friction */
  bmep: number
  imep: number
  pmep: number
  fmep: number
  /** air supplied over air that fills the swept volume at ambient state */
  deliveryRatio: number
  /** fresh charge kept over fresh charge supplied */
  trapping: number
  /** delivery times trapping */
  charging: number
  /** fresh part of the mass shut in */
  scavenging: number
  airFlow: number
  fuelFlow: number
  /** fuel supplied per shaft energy, kg/J */
  bsfc: number
  exhaustT: number
  pMax: number
  /** rad after top dead centre */
  pMaxAngle: number
  /** temperature of the last charge to burn at peak pressure, compressed from exhaust closing without heat, K */
  endGasT: number
  portPMin: number
  portPMinAngle: number
  /** integral of port over cylinder pressure from transfer to exhaust closing, Pa s */
  plugging: number
  /** mass pushed back through the transfers over fresh mass supplied */
  backflow: number
  /** mean gauge pressure behind the pipe, Pa */
  behind: number
  /** heat that leaves one cylinder and its pipe */
  heat: EngineHeat
  books: Books
}

/** Where the heat of one cylinder goes, W: its walls and head with the friction of piston and crank, the crankcase, pipe skins, box. */
export interface EngineHeat {
  cylinder: number
  case: number
  pipe: number
  box: number
}

/** Closing sums of a cycle, as parts of what they close; each should be near nought. */
interface Books {
  /** (mass in - mass out) / mass in */
  mass: number
  /** first law over everything, part of the heat freed */
  energy: number
  /** part of the heat freed that the two gas models differ by at the port */
  ledger: number
  /** fresh charge supplied less burnt less lost, part of supplied */
  fresh: number
}

/** Mean of several cycles' sums. */
export function meanSums(list: readonly CycleSums[]): CycleSums {
  const mean = { ...list[0]! }
  for (const key of Object.keys(mean) as (keyof CycleSums)[])
    mean[key] = list.reduce((sum, c) => sum + c[key], 0) / list.length
  return mean
}

/** Reads one cycle's sums. `heatPipe`: heat given to the pipe's walls in that cycle, J. */
export function readSums(s: TwoStrokeSpec, rpm: number, c: CycleSums, heatPipe: number): CyclePoint {
  const swept = sweptVolume(s.crank)
  const perSecond = rpm / 60
  const imep = c.work / swept
  const pmep = -c.caseWork / swept
  const fmep = frictionPressure(s.friction.c1, s.friction.c2, s.crank.stroke, rpm)
  const bmep = imep - pmep - fmep
  const torque = (bmep * swept) / (2 * Math.PI)
  const power = bmep * swept * perSecond
  const air = (c.massIn * s.mixture.airFuel) / (1 + s.mixture.airFuel)
  const fuel = c.massIn / (1 + s.mixture.airFuel)
  const deliveryRatio = air / ((s.air.p / (airR * s.air.t)) * swept)
  const trapping = c.trappedFresh / c.massIn
  const left =
    c.heatFreed +
    c.enthalpyIn -
    c.work -
    c.caseWork -
    c.heatCylinder -
    c.heatCase -
    heatPipe -
    c.heatBox -
    c.enthalpyOut -
    c.ledger
  return {
    rpm,
    torque,
    power,
    bmep,
    imep,
    pmep,
    fmep,
    deliveryRatio,
    trapping,
    charging: deliveryRatio * trapping,
    scavenging: c.trappedFresh / c.trapped,
    airFlow: air * perSecond,
    fuelFlow: fuel * perSecond,
    bsfc: (fuel * perSecond) / power,
    exhaustT: c.probeHeat / c.probeMass,
    pMax: c.pMax,
    pMaxAngle: c.pMaxAngle,
    // exponent (gamma - 1)/gamma of charge between closing and ignition, gamma about 1.3
    endGasT: c.trappedT * (c.pMax / c.trappedP) ** 0.23,
    portPMin: c.portPMin,
    portPMinAngle: c.portPMinAngle,
    plugging: c.plugging,
    backflow: c.transferBack / c.transferIn,
    behind: c.behind - s.air.p,
    heat: {
      // what friction takes ends in the same metal
      cylinder: (c.heatCylinder + fmep * swept) * perSecond,
      case: c.heatCase * perSecond,
      pipe: heatPipe * perSecond,
      box: c.heatBox * perSecond,
    },
    books: {
      mass: (c.massIn - c.massOut) / c.massIn,
      energy: left / c.heatFreed,
      ledger: c.ledger / c.heatFreed,
      fresh: (c.massIn - c.burntFresh - c.freshOut) / c.massIn,
    },
  }
}
