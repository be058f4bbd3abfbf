import { useCallback, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inCelsius, inMm } from '../../../../base/answers/amounts.ts'
import { type Amount, type Sentence, say } from '../../../../base/answers/sentence.ts'
import { foamLimit, guarded, type HotPart } from '../../../../trades/strength/guards.ts'
import { heatFigure, heatSketch } from '../../../../trades/strength/heatFigures.ts'
import { Figure } from '../../parts/Figure.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { InputsPanel } from '../../parts/InputsPanel.tsx'
import { TradeTables } from '../../parts/TradeParts.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Deck } from './useDeck.ts'

/** The foam that stands nearest its limit, in a few words. */
export function hotSays(deck: Deck): Sentence {
  const parts = deck.inputs.hot.map((part) => ({ part, face: guarded(part, part.guard).face }))
  const over = (p: (typeof parts)[number]) => p.face - foamLimit(p.part)
  const [worst] = parts.sort((a, b) => over(b) - over(a))
  return worst
    ? say`beside ${worst.part.name} it reaches ${inCelsius(worst.face)} of ${inCelsius(foamLimit(worst.part))}`
    : 'no hot part in the file'
}

/** Foam beside hot parts: how hot it gets with distance, and what each guard does. */
export function HotParts({ now, tried }: { now: Deck; tried: Deck | undefined }) {
  const [picked, setPicked] = useState(0)
  const parts = (tried ?? now).inputs.hot
  const index = Math.min(picked, parts.length - 1)
  const part = parts[index]
  return (
    <section className="hotparts">
      {part ? (
        <>
          {parts.length > 1 && (
            <fieldset className="switch">
              <legend className="hush">Hot part</legend>
              {parts.map((p, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: parts keep their order and may share a name
                <Button key={`${i} ${p.name}`} aria-pressed={i === index} onPress={() => setPicked(i)}>
                  {p.name}
                </Button>
              ))}
            </fieldset>
          )}
          <Part part={part} index={index} now={now.inputs.hot[index]} />
        </>
      ) : (
        <p>
          No hot part is in the file. Pipe, stinger and muffler beside foam or deck belong here:{' '}
          <InputLink link="hot parts">add them on the Craft page</InputLink>.
        </p>
      )}
    </section>
  )
}

function Part({ part, index, now }: { part: HotPart; index: number; now: HotPart | undefined }) {
  const units = useApp((s) => s.units)
  const sketch = useCallback((width: number) => heatSketch(part, width, units), [part, units])
  const curve = useCallback((width: number) => heatFigure(part, width, units), [part, units])
  const moved = now !== undefined && JSON.stringify(now) !== JSON.stringify(part)
  const inside = part.spot.distance <= part.spot.radius
  const at = `hot parts.${index}`
  return (
    <>
      <div className="beside">
        <div className="pictures">
          {!inside && (
            <Figure
              draw={sketch}
              name="hot part across"
              caption="The thick edge is the foam’s face: green when it stays cool enough, red when not."
            />
          )}
          <Figure
            draw={curve}
            name="heat"
            caption="Still air after a hard run. The band is the doubt of the part’s temperature, for the guard it has."
          />
        </div>
        <InputsPanel
          title="What moves this"
          inputs={[
            { path: `${at}.guard`, label: `${part.name}: guard` },
            { path: `${at}.distance`, label: `${part.name}: middle to foam` },
            { path: `${at}.temperature`, label: `${part.name}: skin temperature` },
            { path: `${at}.foam`, label: `${part.name}: foam` },
          ]}
        />
      </div>
      <TradeTables
        tables={[
          {
            caption: `Guards for ${part.name}`,
            heads: [
              'Guard',
              'Foam face',
              'Part cooler',
              'Part hotter',
              'May have',
              'Wants, middle to foam',
              'Enough',
            ],
            rows: [...(moved && now ? rows(now, ', now') : []), ...rows(part, moved ? ', tried' : '')],
          },
        ]}
      />
    </>
  )
}

const word = { bare: 'bare', shield: 'one bright plate', wrap: '5 mm of glass wrap' } as const

function rows(part: HotPart, suffix: string): (string | Amount)[][] {
  const limit = foamLimit(part)
  return (['bare', 'shield', 'wrap'] as const).map((guard) => {
    const g = guarded(part, guard)
    const own = guard === part.guard ? ' (in the file)' : ''
    return [
      `${word[guard]}${own}${suffix}`,
      inCelsius(g.face),
      inCelsius(g.low),
      inCelsius(g.high),
      inCelsius(limit),
      Number.isFinite(g.clear) ? inMm(g.clear) : 'more than a hull has',
      g.high <= limit ? 'yes' : g.face <= limit ? 'likely' : 'no',
    ]
  })
}
