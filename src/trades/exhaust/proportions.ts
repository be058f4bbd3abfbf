/**
 * A first pipe from handbook proportions.
 * Blair: shares of the tuned length for a two- or three-stage diffuser, header, belly and baffle as fixed
 * multiples of the port's equal-area diameter, intermediate diameters on a horn law (G. P. Blair, Design and
 * Simulation of Two-Stroke Engines, 1996; the horn exponent 1.25 wide to 2.0 peaky from memory).
 * Jennings: header in diameters, a diffuser of fixed taper to 2.5 diameters, a baffle about twice as steep
 * (G. Jennings, Two-Stroke Tuner's Handbook, 1973, from memory but for the diffuser's 6.25 area ratio).
 */
import type { Segment } from '../../physics/gas/ductMesh.ts'
import { type ClassFigures, classFigures, type PipeClass } from './tuning.ts'

export interface NamedSegment extends Segment {
  name: string
}

export interface Pipe {
  /** from the piston face to the end of the baffle */
  segments: NamedSegment[]
  stinger: { bore: number; length: number }
  /** m, piston face to the start of the stinger */
  tunedLength: number
}

const shares = {
  two: { header: 0.1, diffusers: [0.41, 0.14], belly: 0.11, baffle: 0.24 },
  three: { header: 0.1, diffusers: [0.275, 0.183, 0.092], belly: 0.11, baffle: 0.24 },
} as const

export interface ProportionInputs {
  /** m, piston face to the start of the stinger */
  tunedLength: number
  /** m, equal-area diameter of the port window that the piston uncovers */
  portDiameter: number
  kind: PipeClass
  stages?: 2 | 3
  /** horn exponent, 1.25 wide band to 2 peaky */
  horn?: number
  /** replace the class multiples */
  figures?: Partial<Pick<ClassFigures, 'stinger' | 'header' | 'belly'>>
}

function above(name: string, value: number): void {
  if (!(value > 0) || !Number.isFinite(value)) throw new RangeError(`${name} is ${value}: it must be above 0`)
}

/** Blair's pipe. The piston-face-to-flange duct is part of the header's share. RangeError names a bad input. */
export function proportionedPipe(input: ProportionInputs): Pipe {
  const { tunedLength: L, portDiameter: d0 } = input
  above('tunedLength', L)
  above('portDiameter', d0)
  const f = { ...classFigures[input.kind], ...input.figures }
  const part = input.stages === 2 ? shares.two : shares.three
  const k = input.horn ?? 1.5
  above('horn', k)
  const header = f.header * d0
  const belly = f.belly * d0
  const stinger = f.stinger * d0
  if (!(belly > header && header > 0 && stinger < belly))
    throw new RangeError(`belly ${belly} m must be wider than header ${header} m and stinger ${stinger} m`)
  const segments: NamedSegment[] = [{ name: 'header', length: part.header * L, d0, d1: header }]
  const whole = part.diffusers.reduce((a, b) => a + b, 0)
  let at = 0
  let from = header
  part.diffusers.forEach((share, i) => {
    at += share
    const to = header * Math.exp(Math.log(belly / header) * (at / whole) ** k)
    segments.push({ name: `diffuser ${i + 1}`, length: share * L, d0: from, d1: to })
    from = to
  })
  segments.push({ name: 'belly', length: part.belly * L, d0: belly, d1: belly })
  segments.push({ name: 'baffle', length: part.baffle * L, d0: belly, d1: stinger })
  return { segments, stinger: { bore: stinger, length: part.baffle * L }, tunedLength: L }
}

export interface TaperInputs {
  /** m, piston face to the mean reflection point, half-way down the complete baffle cone */
  tunedLength: number
  portDiameter: number
  /** header length over its diameter, 6 peaky to 11 wide */
  headerDiameters?: number
  /** included angles, rad */
  diffuserAngle?: number
  baffleAngle?: number
  /** belly over header diameter */
  widening?: number
  /** stinger bore over header bore */
  stingerShare?: number
}

const degree = Math.PI / 180

/** Jennings' pipe. RangeError when the parts do not fit the length. */
export function taperedPipe(input: TaperInputs): Pipe {
  const { tunedLength: L, portDiameter } = input
  above('tunedLength', L)
  above('portDiameter', portDiameter)
  // header area 12.5 % above the port's
  const d1 = portDiameter * Math.sqrt(1.125)
  const headerLength = (input.headerDiameters ?? 8) * d1
  const d2 = (input.widening ?? 2.5) * d1
  const slope = (angle: number) => 2 * Math.tan(angle / 2)
  const diffuserLength = (d2 - d1) / slope(input.diffuserAngle ?? 8 * degree)
  const complete = d2 / slope(input.baffleAngle ?? 16 * degree)
  const bellyLength = L - headerLength - diffuserLength - complete / 2
  if (!(bellyLength > 0))
    throw new RangeError(
      `header ${headerLength.toFixed(3)} m, diffuser ${diffuserLength.toFixed(3)} m and half the baffle ${(complete / 2).toFixed(3)} m leave no belly in ${L.toFixed(3)} m`,
    )
  const bore = (input.stingerShare ?? 0.6) * d1
  const baffleLength = complete * (1 - bore / d2)
  return {
    segments: [
      { name: 'header', length: headerLength, d0: d1, d1 },
      { name: 'diffuser', length: diffuserLength, d0: d1, d1: d2 },
      { name: 'belly', length: bellyLength, d0: d2, d1: d2 },
      { name: 'baffle', length: baffleLength, d0: d2, d1: bore },
    ],
    stinger: { bore, length: 12 * bore },
    tunedLength: headerLength + diffuserLength + bellyLength + baffleLength,
  }
}
