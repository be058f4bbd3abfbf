import { useCallback, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { asChange, inSpeed } from '../../../../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { Balance, Change } from '../../../../whole/push/balanceTypes.ts'
import { type Buys, changesBy, changesFigure } from '../../../../whole/push/changesFigure.ts'
import { type Look, saysStep } from '../../../../whole/push/shown.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { app } from '../../state/app.ts'
import { type Craft, inputAt } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { writtenNumber } from '../../state/shownValues.ts'

const asked: readonly [Buys, string][] = [
  ['topSpeed', 'Top speed'],
  ['pull', 'Pull'],
]

interface Props {
  craft: Craft
  now: Balance
  tried: Balance | undefined
  look: Look
}

/** The change that buys most speed, in a few words. */
export function changesSay(now: Balance): Sentence {
  const best = changesBy(now.changes, 'topSpeed')[0]
  return best ? say`${best.says}: ${asChange(inSpeed(best.topSpeed.value))}` : 'being worked out'
}

/** What each single change would buy, as bars and as buttons that try it. */
export function Changes({ craft, now, tried, look }: Props) {
  const units = useApp((s) => s.units)
  const readOnly = useApp((s) => s.role === 'follower')
  const [by, setBy] = useState<Buys>('topSpeed')
  const draw = useCallback(
    (width: number) => changesFigure(now, tried, by, lookOf(units, width)),
    [now, tried, by, units],
  )
  const tryIt = (c: Change) => {
    if (typeof c.to !== 'number') return app.tryValue(c.path, c.to, String(c.to))
    const values = Object.entries({ [c.path]: c.to, ...c.also }).map(
      ([path, to]): [string, number, string] => {
        const input = inputAt(craft, path, units)
        return [
          path,
          to,
          input ? `${writtenNumber(to, input.kind, input.unit)} ${input.unit}`.trim() : String(to),
        ]
      },
    )
    return app.tryAll(values, `try ${printed(c.says, units)}`)
  }
  return (
    <section className="changes">
      <fieldset className="switch">
        <legend className="hush">Judge changes by</legend>
        {asked.map(([id, word]) => (
          <Button key={id} aria-pressed={by === id} onPress={() => setBy(id)}>
            {word}
          </Button>
        ))}
      </fieldset>
      <Figure
        draw={draw}
        caption="One thing changed at a time; whiskers are the likely range of the change, diamonds the same with what is tried."
        name="changes"
      />
      <ul className="plainlist trylist">
        {changesBy(now.changes, by)
          .slice(0, 6)
          .map((c) => (
            <li key={c.id}>
              <Button
                aria-label={`Try ${printed(c.says, units)}`}
                isDisabled={readOnly}
                onPress={() => tryIt(c)}
              >
                Try
              </Button>
              <span>
                {printed(c.says, units)}: {saysStep(c.topSpeed.value, 'speed', look)},{' '}
                {saysStep(c.pull.value, 'force', look)} of pull, {rpmStep(c.rotation.value)}
              </span>
            </li>
          ))}
      </ul>
    </section>
  )
}

function rpmStep(rotation: number): string {
  const rpm = Math.round(rotation * 6) * 10
  return `${rpm > 0 ? '+' : rpm < 0 ? '−' : ''}${Math.abs(rpm)} rpm`
}
