import { useCallback } from 'react'
import { curveFigure } from '../../../../whole/breath/curveFigures.ts'
import type { TorqueLine } from '../../../../whole/breath/curveLines.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useBreath.ts'

interface Props {
  now: Side
  line: TorqueLine | undefined
  tried: TorqueLine | undefined
}

/** Torque and power over engine speed, now and tried. */
export function Curves({ now, line, tried }: Props) {
  const units = useApp((s) => s.units)
  const draw = (what: 'torque' | 'power') => (w: number) =>
    curveFigure(
      {
        what,
        lines: line ? [line] : [],
        tried: tried && { ...tried, name: `${tried.name}, tried` },
      },
      lookOf(units, w),
    )
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const torque = useCallback(draw('torque'), [line, tried, units])
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const power = useCallback(draw('power'), [line, tried, units])
  const cells = now.simulation?.rough ? 'A rough curve so far, on cells of 20 mm.' : 'On cells of 10 mm.'
  const band = line?.low ? ' The band is what the inputs leave open.' : ''
  return (
    <>
      <Figure draw={torque} caption={`${cells}${band}`} name="torque" />
      <Figure draw={power} caption="The same as power: torque times engine speed." name="power" />
    </>
  )
}
