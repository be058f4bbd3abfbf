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
  return (
    <NumbersTable
      caption={caption}
      columns={[
        { head: 'Speed', unit: 'rpm' },
        { head: 'Torque', unit: look.torque },
        { head: 'Power', unit: look.power },
        { head: 'Mean pressure', unit: 'bar' },
        { head: 'Delivery ratio' },
        { head: 'Trapped', unit: '%' },
        { head: 'Fuel', unit: 'g/kWh' },
        { head: 'Exhaust', unit: '°C' },
        { head: 'Peak pressure', unit: 'bar' },
        { head: 'Behind the pipe', unit: 'kPa' },
        { head: 'Cycles to settle' },
      ]}
      rows={points.map((r) => {
        const p = r.point
        if (!p) return [r.rpm, '–', '–', '–', '–', '–', '–', '–', '–', '–', `not in ${r.cycles}`]
        return [
          r.rpm,
          plain(inLook(p.torque * cylinders, 'torque', look), 2),
          plain(inLook(p.power * cylinders, 'power', look), 2),
          plain(p.bmep / 1e5, 2),
          plain(p.deliveryRatio, 2),
          plain(p.trapping * 100, 0),
          plain(p.bsfc * 3.6e9, 0),
          plain(p.exhaustT - 273.15, 0),
          plain(p.pMax / 1e5, 0),
          plain(p.behind / 1e3, 1),
          r.cycles,
        ]
      })}
    />
  )
}
