import { fromSi } from '../../../../base/units/convert.ts'
import { inLook, type Look, plain } from '../../../../whole/push/shown.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import type { Side } from './useBreath.ts'

interface Props {
  now: Side
  tried: Side | undefined
  look: Look
}

/** The curve speed by speed, with what the engine breathes, to be copied. */
export function Numbers({ now, tried, look }: Props) {
  return (
    <>
      <Curve side={now} look={look} caption="Over engine speed" />
      {tried?.simulation?.output?.curve && (
        <Curve side={tried} look={look} caption="Over engine speed, tried values" />
      )}
    </>
  )
}

function Curve({ side, look, caption }: { side: Side; look: Look; caption: string }) {
  const points = side.simulation?.output?.curve?.points ?? []
  const cylinders = side.view.reading?.cylinders ?? 1
  // pressures inside an engine are read in bar, not in kilopascals
  const inside = look.pressure === 'psi' ? 'psi' : 'bar'
  const bars = (p: number) => fromSi(p, 'pressure', inside)
  return (
    <NumbersTable
      caption={caption}
      columns={[
        { head: 'Speed', unit: 'rpm' },
        { head: 'Torque', unit: look.torque },
        { head: 'Power', unit: look.power },
        { head: 'Mean pressure', unit: inside },
        { head: 'Delivery ratio' },
        { head: 'Trapped', unit: '%' },
        { head: 'Fuel', unit: 'g/kWh' },
        { head: 'Exhaust', unit: look.temperature },
        { head: 'Peak pressure', unit: inside },
        { head: 'Behind the pipe', unit: look.pressure },
        { head: 'Cycles to settle' },
      ]}
      rows={points.map((r) => {
        const p = r.point
        if (!p) return [r.rpm, '–', '–', '–', '–', '–', '–', '–', '–', '–', `not in ${r.cycles}`]
        return [
          r.rpm,
          plain(inLook(p.torque * cylinders, 'torque', look), 2),
          plain(inLook(p.power * cylinders, 'power', look), 2),
          plain(bars(p.bmep), inside === 'psi' ? 0 : 2),
          plain(p.deliveryRatio, 2),
          plain(p.trapping * 100, 0),
          plain(p.bsfc * 3.6e9, 0),
          plain(inLook(p.exhaustT, 'temperature', look), 0),
          plain(bars(p.pMax), 0),
          plain(inLook(p.behind, 'pressure', look), 1),
          r.cycles,
        ]
      })}
    />
  )
}
