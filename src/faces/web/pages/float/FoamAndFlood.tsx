import { useCallback } from 'react'
import { inKg } from '../../../../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { FloatReport } from '../../../../trades/float/floatReport.ts'
import { foamAmount, foamPlaces } from '../../../../trades/float/foamWords.ts'
import { foamFigure, leakFigure } from '../../../../trades/float/pageFigures.ts'
import { type Look, plain } from '../../../../whole/push/shown.ts'
import { Figure } from '../../parts/Figure.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { Says } from '../../parts/Says.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useFloat.ts'

interface Props {
  now: Side
  report: FloatReport
  tried: Side | undefined
  triedReport: FloatReport | undefined
  look: Look
}

/** What keeps it up when water is in: foam there and wanted, minutes to flood, published sums to compare with. */
export function FoamAndFlood({ now, report, tried, triedReport }: Props) {
  const shown = triedReport ?? report
  const { hull } = (triedReport && tried ? tried : now).input
  const drawFoam = useCallback(
    (width: number) =>
      foamFigure(
        hull,
        shown.foam.filter((f) => f.volume > 0).map((f) => f.block),
        shown.need.blocks,
        width,
      ),
    [hull, shown],
  )
  const { leak } = report
  const units = useApp((s) => s.units)
  const triedLeak = triedReport?.leak
  const drawLeak = useCallback(
    (width: number) => leakFigure(leak, triedLeak, width, units),
    [leak, triedLeak, units],
  )
  const guidance = shown.findings.find((f) => f.id === 'float.guidance')
  return (
    <>
      <section>
        <h2>With water in it</h2>
        <p>
          <Says says={needWords(shown)} />
        </p>
        <Figure
          draw={drawFoam}
          name="foam"
          caption="Foam keeps a swamped craft upright only when it sits high and far out; low and in the middle it turns it over."
        />
        <NumbersTable
          caption={triedReport ? 'Foam in the file, with what is tried' : 'Foam in the file'}
          columns={[
            { head: 'Block' },
            { head: 'Inside the hull', unit: 'L' },
            { head: 'Lifts', unit: 'kg' },
            { head: 'Middle, forward', unit: 'm' },
            { head: 'Middle, up', unit: 'm' },
          ]}
          rows={[
            ...shown.foam.map((f) => [
              f.block.name,
              plain(1000 * f.volume, 1),
              plain(f.lift, 1),
              plain(f.centre[0], 2),
              plain(f.centre[2], 2),
            ]),
            ...shown.need.blocks.map((b) => [
              `${b.name} (still wanted)`,
              plain(1000 * b.held, 1),
              plain(b.held * shown.need.lift, 1),
              plain((b.low[0] + b.high[0]) / 2, 2),
              plain((b.low[2] + b.high[2]) / 2, 2),
            ]),
          ]}
        />
      </section>
      {leak && (
        <section>
          <h2>Minutes to flood</h2>
          <Figure
            draw={drawLeak}
            name="leak"
            caption={`A hole 10 mm across at ${leak.hole[0].toFixed(2)} m forward of the transom, filling ${leak.space}; engine stopped, no pump.`}
          />
        </section>
      )}
      {guidance && (
        <section>
          <h2>Published guidance, to compare with</h2>
          <p>
            <Says says={guidance.says} />
          </p>
          <ul>
            {guidance.because.map((b) => (
              <li key={printed(b.says)}>
                <Says says={b.says} />
              </li>
            ))}
          </ul>
          <p className="quiet">
            {guidance.sources.join('; ')}. None of these was written for a craft like this one.
          </p>
        </section>
      )}
    </>
  )
}

function needWords(r: FloatReport): Sentence {
  const { need } = r
  const more = need.fitted || need.volume
  if (more <= 0)
    return say`Swamped with its rider lying on it, the foam it has is enough: ${inKg(-need.deficit, 1)} of lift beyond a tenth in hand.`
  const where = need.blocks.length > 0 ? foamPlaces(need) : ' The hull has no free room for it.'
  return say`Swamped with its rider lying on it, it still wants foam, ${foamAmount(need)}.${need.upright ? where : ' No free place tried inside the hull keeps it upright.'}`
}
