import { useCallback, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { heatFigure } from '../../../strength/figures.ts'
import { Figure } from '../../parts/Figure.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { InputsPanel } from '../../parts/InputsPanel.tsx'
import type { Deck } from './useDeck.ts'

/** Foam beside hot parts: how hot it gets with distance, and what the guard does. */
export function HotParts({ now, tried }: { now: Deck; tried: Deck | undefined }) {
  const [picked, setPicked] = useState(0)
  const parts = (tried ?? now).inputs.hot
  const index = Math.min(picked, parts.length - 1)
  const part = parts[index]
  const draw = useCallback((width: number) => heatFigure(part!, width), [part])
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
          <div className="beside">
            <Figure
              draw={draw}
              name="heat"
              caption="Still air after a hard run, the part bare; the band is the doubt of its temperature. What its guard does is among the findings."
            />
            <InputsPanel
              title="What moves this"
              inputs={[
                { path: `hot parts.${index}.distance` },
                { path: `hot parts.${index}.temperature` },
                { path: `hot parts.${index}.guard` },
                { path: `hot parts.${index}.foam` },
              ]}
            />
          </div>
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
