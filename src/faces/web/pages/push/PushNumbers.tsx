import type { Balance, OperatingPoint } from '../../../../whole/push/balanceTypes.ts'
import { inLook, type Look, plain } from '../../../../whole/push/shown.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'

interface Props {
  now: Balance
  tried: Balance | undefined
  look: Look
}

/** Key numbers now and tried, and the operating table over speed, both to be copied. */
export function Numbers({ now, tried, look }: Props) {
  const columns = [
    { head: 'Quantity' },
    { head: 'Now' },
    ...(tried ? [{ head: 'Tried' }] : []),
    { head: 'Unit' },
  ]
  const rows = lines(look).map(([name, unit, pick]) => [
    name,
    pick(now),
    ...(tried ? [pick(tried)] : []),
    unit,
  ])
  return (
    <>
      <NumbersTable caption="Key numbers" columns={columns} rows={rows} />
      <NumbersTable
        caption={tried ? 'Over boat speed, tried values' : 'Over boat speed'}
        columns={[
          { head: 'Speed', unit: look.speed },
          { head: 'Engines', unit: 'rpm' },
          { head: 'Thrust', unit: look.force },
          { head: 'Drag', unit: look.force },
          { head: 'Left over', unit: look.force },
          { head: 'Trim', unit: 'deg' },
          { head: 'Rider’s best place', unit: look.length },
          { head: 'Flow', unit: 'L/s' },
          { head: 'Cavitates' },
        ]}
        rows={overSpeed(tried ?? now, look)}
      />
    </>
  )
}

type Line = readonly [string, string, (b: Balance) => string]

function lines(look: Look): Line[] {
  const at =
    (
      point: (b: Balance) => OperatingPoint | undefined,
      pick: (p: OperatingPoint) => number,
      places: number,
    ) =>
    (b: Balance) => {
      const p = point(b)
      return plain(p ? pick(p) : Number.NaN, places)
    }
  const tied = (b: Balance) => b.tiedUp
  const top = (b: Balance) => b.top
  const rpm = (p: OperatingPoint) => Math.round(p.rotation * 6) * 10
  return [
    ['Pull, tied up', look.force, (b) => plain(inLook(b.pull.value, 'force', look), 0)],
    ['Engine speed, tied up', 'rpm', at(tied, rpm, 0)],
    ['Shaft power, tied up', look.power, at(tied, (p) => inLook(p.power, 'power', look), 2)],
    ['Pump efficiency, tied up', '%', at(tied, (p) => p.pumpEfficiency * 100, 0)],
    ['Top speed', look.speed, (b) => plain(inLook(b.topSpeed.value, 'speed', look), 1)],
    ['Engine speed at the top', 'rpm', at(top, rpm, 0)],
    ['Thrust at the top', look.force, at(top, (p) => inLook(p.thrust, 'force', look), 0)],
    ['Hump', look.speed, (b) => plain(inLook(b.hump.speed, 'speed', look), 1)],
    ['Thrust over drag at the hump', '', (b) => plain(b.hump.margin, 2)],
    ['Time to plane', 's', (b) => plain(b.run.timeToPlane ?? Number.NaN, 1)],
    ['Time to 95 % of top speed', 's', (b) => plain(b.run.timeTo95 ?? Number.NaN, 1)],
    ['Engines’ most power at', 'rpm', (b) => plain(Math.round(b.matching.powerPeakRotation * 6) * 10, 0)],
    [
      'Pitch that does best',
      look.length,
      (b) => plain(inLook(b.verdict.bestPitch.value, 'length', look), look.length === 'mm' ? 0 : 2),
    ],
    ['Torque taken in a valley on the way up', '%', (b) => plain(b.matching.bogRatio * 100, 0)],
  ]
}

/** About twenty speeds of the table. */
function overSpeed(b: Balance, look: Look): (string | number)[][] {
  const c = b.curve
  const every = Math.max(1, Math.round(c.speed.length / 20))
  return c.speed.flatMap((v, i) => {
    if (i % every !== 0) return []
    const force = (f: number) => plain(inLook(f, 'force', look), 0)
    return [
      [
        plain(inLook(v, 'speed', look), 1),
        plain(Math.round(c.rpm[i]! / 10) * 10, 0),
        force(c.thrust[i]!),
        force(c.drag[i]!),
        force(c.thrust[i]! - c.drag[i]!),
        plain((c.trim[i]! * 180) / Math.PI, 1),
        plain(inLook(c.riderAt[i]!, 'length', look), look.length === 'mm' ? 0 : 1),
        plain(c.flow[i]! * 1000, 0),
        c.cavitating[i] ? 'yes' : 'no',
      ],
    ]
  })
}
