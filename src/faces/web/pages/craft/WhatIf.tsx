import { useMemo, useState } from 'react'
import { inNewtons, inRpm, inSpeed } from '../../../../base/answers/amounts.ts'
import { type Sentence, say } from '../../../../base/answers/sentence.ts'
import {
  type WhatIfId,
  type WhatIfSwitch,
  whatIfsFor,
  withWhatIfs,
} from '../../../../whole/picture/whatIfs.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { Says } from '../../parts/Says.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { quickBalance } from '../push/balances.ts'

export interface WhatIfs {
  all: readonly WhatIfSwitch[]
  on: ReadonlySet<WhatIfId>
  /** the craft with what is switched on */
  craft: Craft
  swamped: boolean
  turn: (id: WhatIfId) => void
}

/** Switches on the living picture; they change nothing in the file and are off when another craft comes. */
export function useWhatIfs(craft: Craft): WhatIfs {
  const id = useApp((s) => s.work?.id)
  const [state, setState] = useState<{ id: string | undefined; on: ReadonlySet<WhatIfId> }>({
    id,
    on: new Set(),
  })
  const all = useMemo(() => whatIfsFor(craft), [craft])
  const on = useMemo(() => (state.id === id ? state.on : new Set<WhatIfId>()), [state, id])
  const changed = useMemo(
    () =>
      withWhatIfs(
        craft,
        all.filter((s) => on.has(s.id)),
      ),
    [craft, all, on],
  )
  const turn = (one: WhatIfId) => {
    const next = new Set(on)
    if (!next.delete(one)) next.add(one)
    setState({ id, on: next })
  }
  return { all, on, craft: changed, swamped: on.has('swamped'), turn }
}

/** The switches, and what they do to speed, pull and engine speed. */
export function WhatIf({
  craft,
  ifs,
  balance,
}: {
  craft: Craft
  ifs: WhatIfs
  balance: Balance | undefined
}) {
  const solved = useApp((s) => (s.looked?.craft === craft ? s.looked.solved : undefined))
  const answer = useMemo(
    () => (ifs.craft === craft ? undefined : quickBalance(ifs.craft, solved)),
    [ifs.craft, craft, solved],
  )
  const on = ifs.all.filter((s) => ifs.on.has(s.id))
  const sunk = useApp((s) => s.findings.float?.find((f) => f.id === 'float.swamped'))
  return (
    <div className="whatif">
      <fieldset>
        <legend>What if:</legend>
        {ifs.all.map((s) => (
          <label key={s.id} title={s.means}>
            <input type="checkbox" checked={ifs.on.has(s.id)} onChange={() => ifs.turn(s.id)} />
            {s.word}
          </label>
        ))}
      </fieldset>
      <p role="status">
        {on.length > 0 && (
          <>
            {answer && balance && (
              <Says
                says={answer.balance ? thenSays(balance, answer.balance) : say`No answer: ${answer.says}. `}
              />
            )}
            {ifs.swamped && sunk && (
              <>
                <Says says={sunk.says} />{' '}
              </>
            )}
            <span className="quiet">({on.map((s) => s.means).join('; ')})</span>
          </>
        )}
      </p>
    </div>
  )
}

/** "Then 8.5 km/h instead of 25.9 km/h, 106 N of pull instead of 311 N, tied up at 3200 rpm." */
function thenSays(now: Balance, then: Balance): Sentence {
  const speed: Sentence = Number.isFinite(then.topSpeed.value)
    ? say`${inSpeed(then.topSpeed.value)} instead of ${inSpeed(now.topSpeed.value)}, `
    : ''
  return say`Then ${speed}${inNewtons(then.pull.value)} of pull instead of ${inNewtons(now.pull.value)}, tied up at ${inRpm(then.tiedUpRotation.value)}. `
}
