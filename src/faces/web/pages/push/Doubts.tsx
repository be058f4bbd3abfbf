import { useCallback } from 'react'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { doubtsFigure } from '../../../../whole/push/changesFigure.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'

interface Props {
  craft: Craft
  now: Balance
  tried: Balance | undefined
}

/** How far each input alone may move the answer. */
export function Doubts({ craft, now, tried }: Props) {
  const units = useApp((s) => s.units)
  const draw = useCallback(
    (w: number) => doubtsFigure(craft, now, tried, 'topSpeed', lookOf(units, w)),
    [craft, now, tried, units],
  )
  return (
    <Figure
      draw={draw}
      caption="How far each input alone may move the answer. Blue: measured. Orange: guessed or assumed, so worth measuring. Grey: the models themselves."
      name="doubt"
    />
  )
}
