import { useCallback } from 'react'
import { floatLimits, watchHeight } from '../../../../trades/float/floatLimits.ts'
import type { FloatReport } from '../../../../trades/float/floatReport.ts'
import { rightingFigure } from '../../../../trades/float/pageFigures.ts'
import { inLook, type Look, plain } from '../../../../whole/push/shown.ts'
import { Figure } from '../../parts/Figure.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { Says } from '../../parts/Says.tsx'
import { useApp } from '../../state/hooks.ts'
import { gmWords } from './floatWords.ts'

interface Props {
  report: FloatReport
  triedReport: FloatReport | undefined
  look: Look
}

/** Whether it comes back: righting arms and the two GMs in plain words. */
export function Stability({ report, triedReport, look }: Props) {
  const units = useApp((s) => s.units)
  const draw = useCallback(
    (width: number) => rightingFigure(report.righting, triedReport?.righting, width, units),
    [report, triedReport, units],
  )
  const length = (v: number) =>
    `${plain(inLook(v, 'length', look), look.length === 'mm' ? 0 : 1)} ${look.length}`
  const range = (r: FloatReport['gmRigid']) =>
    Number.isFinite(r.value) ? `${length(r.value)} (${length(r.low)} to ${length(r.high)})` : 'no level rest'
  return (
    <section>
      <Figure
        draw={draw}
        name="righting arm"
        caption={`Above the line it comes back by itself, below it goes on over. Heel to port; the rider keeps his place. Triangle: the deck edge goes under; red cross: the first opening does.${triedReport ? ' Grey and dashed: as it is now.' : ''}`}
      />
      <dl className="gm">
        <div>
          <dt>GM with the rider held stiff</dt>
          <dd>
            {range(report.gmRigid)}
            {triedReport && <small>tried {range(triedReport.gmRigid)}</small>}
          </dd>
        </div>
        <div>
          <dt>GM with the weight where he touches the deck</dt>
          <dd>
            {range(report.gmFeet)}
            {triedReport && <small>tried {range(triedReport.gmFeet)}</small>}
          </dd>
        </div>
      </dl>
      {gmWords.map((line) => (
        <p key={line}>
          <Says says={line} />
        </p>
      ))}
      <NumbersTable
        caption="Righting in numbers"
        columns={[
          { head: 'Rider' },
          { head: 'Most righting arm', unit: look.length },
          { head: 'at heel', unit: '°' },
          { head: 'Goes over past', unit: '°' },
          { head: 'Deck edge under', unit: '°' },
          { head: 'First opening under', unit: '°' },
          { head: 'Area to 30°', unit: 'm·°' },
        ]}
        rows={(['rider', 'stiff', 'nobody'] as const).flatMap((key) => {
          const own = curveRow(report, key, look)
          const other = triedReport && curveRow(triedReport, key, look)
          return other && other.join() !== own.join()
            ? [
                [`${curveWord[key]}, now`, ...own],
                [`${curveWord[key]}, tried`, ...other],
              ]
            : [[curveWord[key], ...own]]
        })}
      />
    </section>
  )
}

const curveWord = { rider: 'balancing', stiff: 'held stiff', nobody: 'nobody aboard' } as const

/** what a designer reads off a righting curve */
function curveRow(r: FloatReport, key: keyof typeof curveWord, look: Look): string[] {
  const c = r.righting[key]
  const degrees = (a: number | undefined) => plain(a === undefined ? Number.NaN : (a * 180) / Math.PI, 0)
  const rights = c.greatest.arm > 0
  return [
    plain(rights ? inLook(c.greatest.arm, 'length', look) : Number.NaN, look.length === 'mm' ? 0 : 1),
    degrees(rights ? c.greatest.heel : undefined),
    degrees(c.vanishing),
    degrees(c.deckEdge),
    degrees(c.flooding?.heel),
    plain((c.areaTo30 * 180) / Math.PI, 2),
  ]
}

/** How high every opening stands above water in each state. */
export function Openings({ report, triedReport, look }: Props) {
  if (report.openings.length === 0)
    return (
      <section>
        <p>
          No opening is in the file. Measure the lowest point of hatch, air intake, exhaust outlet, tank vent
          and cables where water could get in: a tape and ten minutes.
        </p>
      </section>
    )
  const places = look.length === 'mm' ? 0 : 1
  const cells = (r: FloatReport, i: number) =>
    report.openingStates.map((name) => {
      const at = r.openingStates.indexOf(name)
      const height = r.openings[i]?.heights[at]
      return plain(height === undefined ? Number.NaN : inLook(height, 'length', look), places)
    })
  const rows = report.openings.flatMap(({ opening }, i) => {
    const need = watchHeight(opening.kind, floatLimits)
    const advised = plain(Number.isFinite(need) ? inLook(need, 'length', look) : Number.NaN, places)
    const own = [opening.name, opening.kind, ...cells(report, i), advised]
    const other = triedReport && [`${opening.name}, tried`, opening.kind, ...cells(triedReport, i), advised]
    return other && other.slice(1).join() !== own.slice(1).join() ? [own, other] : [own]
  })
  return (
    <section>
      <NumbersTable
        caption={`Openings: height above water, ${look.length}`}
        columns={[
          { head: 'Opening' },
          { head: 'Kind' },
          ...report.openingStates.map((head) => ({ head })),
          { head: 'advised at rest' },
        ]}
        rows={rows}
      />
      <p className="quiet">
        Below nothing it is under water. The heights advised are judgement, no rule. A shaft seal is meant to
        be under.
      </p>
    </section>
  )
}
