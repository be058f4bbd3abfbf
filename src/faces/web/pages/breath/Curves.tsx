import { useCallback } from 'react'
import type { TorqueLine } from '../../../../trades/engine/torqueLine.ts'
import { curveFigure } from '../../../../whole/breath/curveFigures.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useBreath.ts'

interface Lines {
  line: TorqueLine | undefined
  tried: TorqueLine | undefined
}

/** Torque over engine speed, now and tried. */
export function TorqueCurve({ now, line, tried }: Lines & { now: Side }) {
  const draw = useDraw('torque', line, tried)
  const cells = now.simulation?.rough ? 'A rough curve so far, on cells of 20 mm.' : 'On cells of 10 mm.'
  const band = line?.low ? ' The band is what the inputs leave open.' : ''
  return <Figure draw={draw} caption={`${cells}${band}`} name="torque" />
}

/** The same as power. */
export function PowerCurve({ line, tried }: Lines) {
  const draw = useDraw('power', line, tried)
  return <Figure draw={draw} caption="The same as power: torque times engine speed." name="power" />
}

function useDraw(what: 'torque' | 'power', line: TorqueLine | undefined, tried: TorqueLine | undefined) {
  const units = useApp((s) => s.units)
  return useCallback(
    (w: number) =>
      curveFigure(
        { what, lines: line ? [line] : [], tried: tried && { ...tried, name: `${tried.name}, tried` } },
        lookOf(units, w),
      ),
    [what, line, tried, units],
  )
}
