import { useCallback, useMemo } from 'react'
import type { Decision } from '../../../../base/answers/decision.ts'
import type { Finding } from '../../../../base/answers/finding.ts'
import { printed } from '../../../../base/answers/sentence.ts'
import { craftPicture } from '../../../../whole/picture/craftPicture.ts'
import { numbered, numbersOf } from '../../../../whole/picture/numbered.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { addressOfDecision } from './decisionAddress.ts'
import { useWhatIfs, WhatIf } from './WhatIf.tsx'

interface Props {
  craft: Craft
  /** what to do about it, worst first, and the findings that rests on */
  decisions: readonly Decision[]
  findings: readonly Finding[]
}

/** numbers on the picture at most: more would hide it */
const most = 9

/** The craft to scale, from the side, from above and from astern, floating at rest, with what to do numbered at its place. */
export function Picture({ craft, decisions, findings }: Props) {
  const units = useApp((s) => s.units)
  const list = useMemo(() => numbered(craft, decisions, findings, most), [craft, decisions, findings])
  const ifs = useWhatIfs(craft)
  const balance = useApp((s) => (s.looked?.craft === craft ? s.looked.balance : undefined))
  const { craft: shown, swamped } = ifs
  const draw = useCallback(
    (width: number) => craftPicture(shown, lookOf(units, width), numbersOf(list), swamped),
    [shown, units, list, swamped],
  )
  const spots = useCallback(
    (n: number) => {
      const decision = list.find((one) => one.n === n)?.decision
      if (!decision) return undefined
      return { href: addressOfDecision(decision, findings), says: printed(decision.says, units) }
    },
    [list, findings, units],
  )
  return (
    <div className="living">
      <WhatIf craft={craft} ifs={ifs} balance={balance} />
      <Figure
        draw={draw}
        spots={spots}
        caption={
          decisions.length > 0
            ? 'To scale, from the hull the file describes. Numbers are those of the list: press one to go there.'
            : 'To scale, from the hull the file describes: its mesh, its stations or its measures.'
        }
        name={craft.name}
      />
    </div>
  )
}
