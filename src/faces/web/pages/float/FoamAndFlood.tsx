import { useCallback } from 'react'
import { inKg, inLitres, inMetres, inMm } from '../../../../base/answers/amounts.ts'
import type { Finding } from '../../../../base/answers/finding.ts'
import { printed, type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { FloatReport } from '../../../../trades/float/floatReport.ts'
import { foamWanted } from '../../../../trades/float/foamWords.ts'
import { foamFigure, leakFigure } from '../../../../trades/float/pageFigures.ts'
import { Figure } from '../../parts/Figure.tsx'
import { Says } from '../../parts/Says.tsx'
import { TradeTables } from '../../parts/TradeParts.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useFloat.ts'

interface Props {
  now: Side
  report: FloatReport
  tried: Side | undefined
  triedReport: FloatReport | undefined
}

/** What keeps it up when water is in: foam there and wanted. */
export function Foam({ now, report, tried, triedReport }: Props) {
  const shown = triedReport ?? report
  const { hull } = (triedReport && tried ? tried : now).input
  const draw = useCallback(
    (width: number) =>
      foamFigure(
        hull,
        shown.foam.filter((f) => f.volume > 0).map((f) => f.block),
        shown.need.blocks,
        width,
      ),
    [hull, shown],
  )
  const cells = (volume: number, lift: number, forward: number, up: number) => [
    inLitres(volume),
    inKg(lift),
    inMetres(forward),
    inMetres(up),
  ]
  return (
    <>
      <Figure
        draw={draw}
        name="foam"
        caption="Foam keeps a swamped craft upright only when it sits high and far out; low and in the middle it turns it over."
      />
      <TradeTables
        tables={[
          {
            caption: triedReport ? 'Foam in the file, with what is tried' : 'Foam in the file',
            heads: ['Block', 'Inside the hull', 'Lifts', 'Middle, forward', 'Middle, up'],
            rows: [
              ...shown.foam.map((f) => [f.block.name, ...cells(f.volume, f.lift, f.centre[0], f.centre[2])]),
              ...shown.need.blocks.map((b) => [
                `${b.name} (still wanted)`,
                ...cells(
                  b.held,
                  b.held * shown.need.lift,
                  (b.low[0] + b.high[0]) / 2,
                  (b.low[2] + b.high[2]) / 2,
                ),
              ]),
            ],
          },
        ]}
      />
    </>
  )
}

/** How long a hole takes to fill it. */
export function Leak({ report, triedReport }: Pick<Props, 'report' | 'triedReport'>) {
  const units = useApp((s) => s.units)
  const { leak } = report
  const triedLeak = triedReport?.leak
  const draw = useCallback(
    (width: number) => leakFigure(leak, triedLeak, width, units),
    [leak, triedLeak, units],
  )
  if (!leak) return null
  return (
    <Figure
      draw={draw}
      name="leak"
      caption={say`A hole ${inMm(0.01)} across at ${inMetres(leak.hole[0])} forward of the transom, filling ${leak.space}; engine stopped, no pump.`}
    />
  )
}

/** Published sums to compare with. */
export function Guidance({ finding }: { finding: Finding }) {
  return (
    <section>
      <p>
        <Says says={finding.says} />
      </p>
      <ul>
        {finding.because.map((b) => (
          <li key={printed(b.says)}>
            <Says says={b.says} />
          </li>
        ))}
      </ul>
      <p className="quiet">
        {finding.sources.join('; ')}. None of these was written for a craft like this one.
      </p>
    </section>
  )
}

/** What the foam does, or what is wanted yet. */
export function needWords(r: FloatReport): Sentence {
  const { need } = r
  const more = need.fitted || need.volume
  if (more <= 0)
    return say`Swamped with its rider lying on it, the foam it has is enough: ${inKg(-need.deficit, 1)} of lift beyond a tenth in hand.`
  const { says, act } = foamWanted(need)
  return act === undefined ? says : say`${says} → ${act}.`
}
