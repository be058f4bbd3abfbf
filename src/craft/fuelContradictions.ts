/** What in the fuel section of a craft file contradicts the rest of it: a tank or an opening that is not there, a line that leads nowhere. */
import { type Contradiction, shown } from './contradiction.ts'
import { carburettorNames, startOfLines, unreached } from './fuelPath.ts'
import type { Craft } from './schema/craftSchema.ts'

const listed = (names: readonly string[]) => (names.length > 0 ? names.join(', ') : 'none is in the file')

export function inFuel(craft: Craft): Contradiction[] {
  const { fuel, tanks, openings } = craft
  if (!fuel) return []
  const found: Contradiction[] = []
  const wrong = (path: string, what: string, expected: string, severity: 'error' | 'warning' = 'error') =>
    found.push({ path, found: what, expected, severity })
  if (fuel.tank !== undefined && !tanks.some((t) => t.name === fuel.tank))
    wrong('fuel.tank', fuel.tank, `the name of one of the tanks: ${listed(tanks.map((t) => t.name))}`)
  if (fuel.tank === undefined && tanks.length === 0)
    wrong('fuel', 'a fuel section and no tank', 'a tank in the tanks list for the fuel to come from')
  const { opening } = fuel.vent
  const vents = openings.filter((o) => o.kind === 'tank vent').map((o) => o.name)
  if (opening !== undefined && !openings.some((o) => o.name === opening))
    wrong('fuel.vent.opening', opening, `the name of one of the openings: ${listed(vents)}`)
  if (fuel.use.fullThrottle.value + fuel.use.idle.value > 1 + 1e-9)
    wrong('fuel.use.idle', 'full throttle and idle above 100 % together', 'shares that leave 0 % or more')
  found.push(...oilTwice(craft, fuel), ...inLines(craft, fuel))
  return found
}

/** How much oil is in the mixture stands under an engine too: two that differ are one too many. */
function oilTwice({ engines }: Craft, { oil }: NonNullable<Craft['fuel']>): Contradiction[] {
  if (oil.source === 'assumed') return []
  return engines.flatMap((e): Contradiction[] => {
    if (e.kind !== 'two-stroke' || e.mixture.oil.source === 'assumed') return []
    const own = e.mixture.oil
    if (Math.abs(own.value - oil.value) <= 0.1 * own.value) return []
    return [
      {
        path: oil.path,
        found: shown(oil, '%'),
        expected: `the ${shown(own, '%')} that ${own.path} has, or none of its own`,
        severity: 'warning',
      },
    ]
  })
}

function inLines(craft: Craft, { lines }: NonNullable<Craft['fuel']>): Contradiction[] {
  if (lines.length === 0) return []
  const found: Contradiction[] = []
  const ends = new Set<string>()
  for (const [i, l] of lines.entries()) {
    if (l.from === l.to || l.to === startOfLines || ends.has(l.to))
      found.push({
        path: `fuel.lines.${i}.to`,
        found: l.to,
        expected: 'a place that no other line ends at, and not where this one begins',
        severity: 'error',
      })
    ends.add(l.to)
  }
  for (const name of unreached(craft))
    found.push({
      path: 'fuel.lines',
      found: `no line from the tank to ${name}`,
      expected: `lines from ${startOfLines} that end at each engine with a carburettor: ${carburettorNames(craft).join(', ')}`,
      severity: 'error',
    })
  return found
}
