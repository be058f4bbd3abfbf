import { healthOf } from '../../../../trades/engine/health.ts'
import { peaksOf } from '../../../../trades/engine/torqueFromSimulation.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import type { Side } from './useBreath.ts'

/** The closing sums of the point of most power: what goes in must come out. */
export function Trust({ side }: { side: Side }) {
  const curve = side.simulation?.output?.curve
  const spec = side.view.reading?.spec
  const peak = curve && peaksOf(curve)?.power
  if (!peak || !spec) return null
  const percent = (v: number) => `${(100 * v).toFixed(2).replace('-', '−')}`
  return (
    <NumbersTable
      caption={`How far the books close at ${peak.rpm} rpm`}
      columns={[
        { head: 'Sum over one turn' },
        { head: 'Left over', unit: '%' },
        { head: 'Allowed', unit: '%' },
        { head: 'Closes' },
      ]}
      rows={healthOf(spec, peak).checks.map((c) => [
        c.name,
        percent(c.value),
        percent(c.limit),
        c.holds ? 'yes' : 'no',
      ])}
    />
  )
}
