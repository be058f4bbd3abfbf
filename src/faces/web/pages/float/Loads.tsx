import { useCallback } from 'react'
import { printed } from '../../../../base/answers/sentence.ts'
import type { FloatReport } from '../../../../trades/float/floatReport.ts'
import type { LoadCase } from '../../../../trades/float/loadCase.ts'
import { loadsFigure, loadWords } from '../../../../trades/float/loadsFigure.ts'
import { inLook, type Look, massIn, massUnit, plain } from '../../../../whole/push/shown.ts'
import { Figure } from '../../parts/Figure.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import type { Side } from './useFloat.ts'

interface Props {
  now: Side
  report: FloatReport
  tried: Side | undefined
  triedReport: FloatReport | undefined
  look: Look
}

/** Nobody, prone, kneeling, standing, swamped: side by side as pictures and as a table. */
export function Loads({ now, report, tried, triedReport, look }: Props) {
  const both = triedReport && tried
  const { input } = both ? tried : now
  const draw = useCallback(
    (width: number) => {
      const shown = (r: FloatReport) => r.cases.filter((c) => c.name !== 'as ridden')
      const before = both ? { before: { hull: now.input.hull, cases: shown(report) } } : {}
      return loadsFigure(
        {
          hull: input.hull,
          cases: shown(triedReport ?? report),
          rider: input.rider,
          system: look.length === 'mm' ? 'metric' : 'inch',
          ...before,
        },
        width,
      )
    },
    [input, now, report, triedReport, both, look],
  )
  const rows = report.cases.flatMap((c, i) => {
    const other = triedReport?.cases[i]
    const own = row(c, look, '')
    const moved = other && row(other, look, '').join() !== own.join()
    return moved ? [own, row(other, look, ', tried')] : [own]
  })
  return (
    <section className="loads">
      <Figure
        draw={draw}
        name="loads"
        caption={`From the side, each on its own waterline${triedReport ? ': tried in full lines, now dashed' : ''}. The red cross is the common centre of gravity.`}
      />
      <NumbersTable
        caption="Loads in numbers"
        columns={[
          { head: 'Load' },
          { head: 'All told', unit: massUnit(look) },
          { head: 'Stern deep', unit: look.length },
          { head: 'Bow deep', unit: look.length },
          { head: 'Deck edge above', unit: look.length },
          { head: 'Trim, bow up', unit: '°' },
          { head: 'Heel, to port', unit: '°' },
          { head: 'GM, stiff rider', unit: look.length },
          { head: 'GM, balancing', unit: look.length },
          { head: 'Roll', unit: 's' },
          { head: 'Ends up' },
        ]}
        rows={rows}
      />
    </section>
  )
}

/** held stiff it would go over: it stays only while its rider keeps his balance */
function ending(c: LoadCase, stays: boolean, look: Look): string {
  if (!stays) return printed(loadWords(c), look.length === 'mm' ? 'metric' : 'inch')
  return !(c.gmRigid >= 0) && c.gmFeet > 0 ? 'stays while its rider balances' : 'stays'
}

function row(c: LoadCase, look: Look, word: string): (string | number)[] {
  const stays = !c.sinks && !c.over
  const length = (v: number) =>
    plain(stays ? inLook(v, 'length', look) : Number.NaN, look.length === 'mm' ? 0 : 1)
  const angle = (v: number) => plain(stays ? (v * 180) / Math.PI : Number.NaN, 1)
  return [
    `${c.name}${word}`,
    massIn(c.mass, look, 0),
    length(c.draftAft),
    length(c.draftFore),
    length(c.freeboard),
    angle(c.attitude.trim),
    angle(c.attitude.heel),
    length(c.gmRigid),
    length(c.gmFeet),
    plain(stays ? c.rollPeriod : Number.NaN, 1),
    ending(c, stays, look),
  ]
}
