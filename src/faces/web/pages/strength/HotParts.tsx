import { useCallback, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { foamLimit, guarded, type HotPart } from '../../../../trades/strength/guards.ts'
import { heatFigure, heatSketch } from '../../../../trades/strength/heatFigures.ts'
import { plain } from '../../../../whole/push/shown.ts'
import { Figure } from '../../parts/Figure.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { InputsPanel } from '../../parts/InputsPanel.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import type { Deck } from './useDeck.ts'

/** Foam beside hot parts: how hot it gets with distance, and what each guard does. */
export function HotParts({ now, tried }: { now: Deck; tried: Deck | undefined }) {
  const [picked, setPicked] = useState(0)
  const parts = (tried ?? now).inputs.hot
  const index = Math.min(picked, parts.length - 1)
  const part = parts[index]
  return (
    <section className="hotparts">
      <h2>Foam beside hot parts</h2>
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
  const sketch = useCallback((width: number) => heatSketch(part, width), [part])
  const curve = useCallback((width: number) => heatFigure(part, width), [part])
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
      <NumbersTable
        caption={`Guards for ${part.name}`}
        columns={[
          { head: 'Guard' },
          { head: 'Foam face', unit: '°C' },
          { head: 'Part cooler', unit: '°C' },
          { head: 'Part hotter', unit: '°C' },
          { head: 'May have', unit: '°C' },
          { head: 'Wants, middle to foam', unit: 'mm' },
          { head: 'Enough' },
        ]}
        rows={[...(moved && now ? rows(now, ', now') : []), ...rows(part, moved ? ', tried' : '')]}
      />
    </>
  )
}

const word = { bare: 'bare', shield: 'one bright plate', wrap: '5 mm of glass wrap' } as const

function rows(part: HotPart, suffix: string): string[][] {
  const limit = foamLimit(part)
  return (['bare', 'shield', 'wrap'] as const).map((guard) => {
    const g = guarded(part, guard)
    const own = guard === part.guard ? ' (in the file)' : ''
    return [
      `${word[guard]}${own}${suffix}`,
      plain(g.face - 273.15, 0),
      plain(g.low - 273.15, 0),
      plain(g.high - 273.15, 0),
      plain(limit - 273.15, 0),
      Number.isFinite(g.clear) ? plain(1e3 * g.clear, 0) : 'over 3000',
      g.high <= limit ? 'yes' : g.face <= limit ? 'likely' : 'no',
    ]
  })
}
