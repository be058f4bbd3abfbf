/** Time-areas of an engine's ports and the rpm each suits: which port holds the engine back. Definitions in ports.ts. */

import type { TwoStrokeSpec } from './engineSpec.ts'
import { sweptVolume } from './geometry.ts'
import {
  angleArea,
  happyRpm,
  roofDepth,
  skirtDepth,
  timeArea,
  timeAreaTargets,
  windowArea,
} from './portAreas.ts'

export interface PortFigure {
  port: 'exhaust' | 'transfers' | 'inlet'
  /** integral of open area over crank angle, m2 rad */
  angleArea: number
  /** s/m at the rpm asked for, and the guidance */
  timeArea: number
  low: number
  high: number
  /** rpm at which the port meets the low and the high end of the guidance */
  suitsFrom: number
  suitsTo: number
}

/** Exhaust, transfers and, for a piston port, inlet at `rpm`. Windows as they stand, without discharge coefficients. */
export function portFigures(s: TwoStrokeSpec, rpm: number): PortFigure[] {
  const { crank } = s
  const swept = sweptVolume(crank)
  const turn = 2 * Math.PI
  const roof = (p: TwoStrokeSpec['exhaust'] | TwoStrokeSpec['transfers'], part: number): number =>
    angleArea((a) => part * windowArea(p, roofDepth(crank, p.opens, p.height, a)), p.opens, turn - p.opens)
  const figure = (
    port: PortFigure['port'],
    area: number,
    target: { low: number; high: number },
  ): PortFigure => ({
    port,
    angleArea: area,
    timeArea: timeArea(area, swept, rpm),
    ...target,
    suitsFrom: happyRpm(area, swept, target.high),
    suitsTo: happyRpm(area, swept, target.low),
  })
  const out = [
    figure('exhaust', roof(s.exhaust, 1), timeAreaTargets.exhaust),
    figure('transfers', roof(s.transfers, s.transfers.narrowing), timeAreaTargets.transfer),
  ]
  const inlet = s.inlet
  if (inlet.kind === 'piston port') {
    const area = angleArea(
      (a) => windowArea(inlet, skirtDepth(crank, inlet.opens, inlet.height, a)),
      -inlet.opens,
      inlet.opens,
    )
    out.push(figure('inlet', area, timeAreaTargets.inlet))
  }
  return out
}

/** Blowdown time-area, s/m: exhaust alone, from its opening to that of the transfers. No published target; compare engines. */
export function blowdownTimeArea(s: TwoStrokeSpec, rpm: number): number {
  const { crank, exhaust } = s
  const area = angleArea(
    (a) => windowArea(exhaust, roofDepth(crank, exhaust.opens, exhaust.height, a)),
    exhaust.opens,
    s.transfers.opens,
  )
  return timeArea(area, sweptVolume(crank), rpm)
}
