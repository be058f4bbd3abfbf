import { useCallback } from 'react'
import { inPercent } from '../../../../base/answers/amounts.ts'
import { type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { doubtsFigure } from '../../../../whole/push/changesFigure.ts'
import { doubtOf } from '../../../../whole/push/pushAnswer.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'

interface Props {
  craft: Craft
  now: Balance
  tried: Balance | undefined
}

/** The inputs that carry most of the doubt, in a few words. */
export function doubtsSay(craft: Craft, now: Balance): Sentence {
  const { share, names } = doubtOf(craft, now)
  return names.length === 0 ? 'being worked out' : say`${inPercent(share)} of it from ${names.join(' and ')}`
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
