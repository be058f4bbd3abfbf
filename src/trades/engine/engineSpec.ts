/** What the two-stroke simulation needs to know of an engine. SI throughout; angles radians. */
import type { Segment } from '../../physics/gas/ductMesh.ts'
import type { Outside } from '../../physics/gas/walls.ts'
import {
  angleOfTravel,
  type Crank,
  meanPistonSpeed,
  pistonArea,
  pistonTravel,
  sweptVolume,
} from './geometry.ts'
import type { Window } from './portAreas.ts'
import type { Scavenging } from './scavenge.ts'

interface ExhaustPort extends Window {
  /** after top dead centre */
  opens: number
  discharge: number
}

interface TransferPorts extends Window {
  opens: number
  discharge: number
  /** cosine losses of the entry, 1 for straight in */
  narrowing: number
  /** from crankcase to window, m, and mean area of all ducts, m2: the inertia of the columns */
  ductLength: number
  ductArea: number
  /** false leaves the inertia of the columns out */
  inertance: boolean
  /**
   * Gas that the cylinder pushes back into the ducts: it keeps its heat ('hot'), or leaves it in the walls and
   * picks it up on its return ('cooled'). Default hot.
   */
  plug?: 'hot' | 'cooled'
  scavenging: Scavenging
}

export interface ReedInlet {
  kind: 'reed'
  /** largest open area times discharge coefficient, m2 */
  area: number
  /** pressure drop that cracks the petals and the further drop that opens them fully, Pa */
  crack: number
  full: number
  /** lowest natural frequency of a petal, Hz, where known */
  frequency?: number
}

export interface PistonPortInlet extends Window {
  kind: 'piston port'
  /** before top dead centre; closes as far after */
  opens: number
  discharge: number
}

export type Outlet =
  | { kind: 'open' }
  | {
      kind: 'box'
      /** m3 */
      volume: number
      /** outlet tube bore m, and discharge coefficient */
      bore: number
      discharge: number
      /** overall heat loss of the box to the air, W/K */
      loss: number
    }

export interface TwoStrokeSpec {
  crank: Crank
  exhaust: ExhaustPort
  transfers: TransferPorts
  inlet: ReedInlet | PistonPortInlet
  carburettor: { bore: number; discharge: number }
  /** inlet tract: length m, mean area m2 */
  tract: { length: number; area: number }
  /** clearance volume, m3 */
  clearance: number
  caseRatio: number
  /** before top dead centre */
  ignition: number
  burn: { delay: number; duration: number; a: number; m: number; completeness: number }
  mixture: { lambda: number; airFuel: number; heat: number }
  friction: { c1: number; c2: number }
  walls: { cylinder: number; annand: number; case: number; caseLoss: number }
  pipe: readonly Segment[]
  outside: Outside
  /** Nu = heatFactor Re^3/4 in the pipe */
  heatFactor: number
  outlet: Outlet
  air: { p: number; t: number; mixtureT: number }
  /** gas of the pipe */
  gas: { gamma: number; r: number }
  /** no spark: what is shut in is only compressed (a dead engine that is dragged) */
  unfired?: boolean
}

/** Something wrong with an input: the field, and a sentence. */
export interface SpecFault {
  path: string
  says: string
}

const degrees = (x: number): string => `${((x * 180) / Math.PI).toFixed(1)}°`
const mm = (x: number): string => `${(x * 1000).toFixed(1)} mm`

/** Height of a port that the piston uncovers when its roof opens at `opens`. */
export const uncoveredHeight = (c: Crank, opens: number): number => c.stroke - pistonTravel(c, opens)

/** Largest mean piston speed the simulation will run at, m/s; common practice, no source. */
const pistonSpeedLimit = 26

/** Every fault that would make a run meaningless, by field; empty when it can run. */
export function validateSpec(s: TwoStrokeSpec, rpms: readonly number[] = []): SpecFault[] {
  const faults: SpecFault[] = []
  const say = (path: string, says: string): void => {
    faults.push({ path, says })
  }
  const above = (path: string, value: number): void => {
    if (!(value > 0 && Number.isFinite(value))) say(path, `${path} is ${value}; it must be above 0`)
  }
  for (const key of ['bore', 'stroke', 'rod'] as const) above(`crank.${key}`, s.crank[key])
  if (s.crank.rod <= 0.5 * s.crank.stroke)
    say(
      'crank.rod',
      `crank.rod is ${mm(s.crank.rod)}, not longer than half the stroke: the crank cannot turn`,
    )
  if (faults.length > 0) return faults
  portFaults(s, say, above)
  above('clearance', s.clearance)
  if (!(s.caseRatio > 1.05 && s.caseRatio < 3))
    say('caseRatio', `caseRatio is ${s.caseRatio}; it must be between 1.05 and 3`)
  above('carburettor.bore', s.carburettor.bore)
  above('tract.length', s.tract.length)
  above('tract.area', s.tract.area)
  if (s.pipe.length === 0) say('pipe', 'pipe has no segments; give at least one tube')
  s.pipe.forEach((p, i) => {
    for (const key of ['length', 'd0', 'd1'] as const)
      if (!(p[key] > 0)) say(`pipe[${i}].${key}`, `pipe[${i}].${key} is ${mm(p[key])}; it must be above 0`)
  })
  if (s.outlet.kind === 'box') {
    above('outlet.bore', s.outlet.bore)
    const swept = sweptVolume(s.crank)
    if (!(s.outlet.volume >= swept))
      say(
        'outlet.volume',
        `outlet.volume is ${(s.outlet.volume * 1e6).toFixed(0)} cm³, smaller than the cylinder (${(swept * 1e6).toFixed(0)} cm³); a muffler box needs ten times that or more`,
      )
  }
  if (!(s.mixture.lambda >= 0.6 && s.mixture.lambda <= 1.4))
    say('mixture.lambda', `mixture.lambda is ${s.mixture.lambda}; it must be 0.6 to 1.4`)
  for (const rpm of rpms) {
    const speed = meanPistonSpeed(s.crank.stroke, rpm)
    if (!(rpm > 0)) say('rpm', `rpm is ${rpm}; it must be above 0`)
    else if (speed > pistonSpeedLimit)
      say(
        'rpm',
        `rpm ${rpm} moves the piston at ${speed.toFixed(1)} m/s on average, beyond ${pistonSpeedLimit} m/s; nothing of this kind runs there`,
      )
  }
  return faults
}

type Say = (path: string, says: string) => void

function portFaults(s: TwoStrokeSpec, say: Say, above: (path: string, value: number) => void): void {
  for (const name of ['exhaust', 'transfers'] as const) {
    const port = s[name]
    if (!(port.opens > 0.6 && port.opens < Math.PI - 0.05)) {
      say(
        `${name}.opens`,
        `${name}.opens is ${degrees(port.opens)} after top dead centre: the port never opens`,
      )
      continue
    }
    above(`${name}.width`, port.width)
    above(`${name}.height`, port.height)
    above(`${name}.discharge`, port.discharge)
  }
  if (s.transfers.opens <= s.exhaust.opens)
    say(
      'transfers.opens',
      `transfers.opens at ${degrees(s.transfers.opens)}, not after the exhaust at ${degrees(s.exhaust.opens)}: there is no blowdown`,
    )
  const widest = Math.PI * s.crank.bore
  if (s.exhaust.width + s.transfers.width > widest)
    say(
      'transfers.width',
      `exhaust and transfers together are wider than the bore's circumference, ${mm(widest)}`,
    )
  if (s.exhaust.opens > 0 && pistonArea(s.crank.bore) * pistonTravel(s.crank, s.exhaust.opens) <= 0)
    say('exhaust.opens', 'exhaust.opens at top dead centre')
  if (s.inlet.kind === 'reed') {
    above('inlet.area', s.inlet.area)
    above('inlet.full', s.inlet.full)
  } else {
    above('inlet.width', s.inlet.width)
    above('inlet.height', s.inlet.height)
    if (!(s.inlet.opens > 0.2 && s.inlet.opens < 2.4))
      say(
        'inlet.opens',
        `inlet.opens is ${degrees(s.inlet.opens)} before top dead centre: the port never opens`,
      )
  }
}

/**
 * Compares a timing with the depth of the port's roof below the crown's top position. Undefined when they agree
 * within 1.5 degrees; otherwise the fault.
 */
export function timingAgainstHeight(
  c: Crank,
  path: string,
  opens: number,
  roofDepth: number,
): SpecFault | undefined {
  if (!(roofDepth > 0 && roofDepth < c.stroke))
    return { path, says: `${path}: a roof ${mm(roofDepth)} down is outside the stroke of ${mm(c.stroke)}` }
  const byHeight = angleOfTravel(c, roofDepth)
  const limit = (1.5 * Math.PI) / 180
  if (Math.abs(byHeight - opens) <= limit) return undefined
  return {
    path,
    says: `${path}: the wheel says ${degrees(opens)}, the height says ${degrees(byHeight)}; they must agree within 1.5°, measure both again`,
  }
}
