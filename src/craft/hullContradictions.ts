/** What in the hull of a craft file contradicts something else in it: its measures, and its station table point by point. */
import { formatQuantity } from '../base/units/format.ts'
import { type Contradiction, failing, shown, type Test } from './contradiction.ts'
import type { Craft } from './schema/craftSchema.ts'

export function inHull({ hull }: Craft): Contradiction[] {
  const tests: Test[] = [
    [
      hull.chineBeam.value > hull.beam.value,
      hull.chineBeam,
      'm',
      `a chine beam no wider than the beam of ${shown(hull.beam, 'm')}`,
    ],
    [
      hull.beam.value > hull.length.value,
      hull.beam,
      'm',
      `a beam smaller than the length of ${shown(hull.length, 'm')}`,
    ],
    [
      hull.depth.value > hull.beam.value,
      hull.depth,
      'm',
      `a depth smaller than the beam of ${shown(hull.beam, 'm')}`,
    ],
    [
      hull.noseRiseFrom.value >= hull.length.value,
      hull.noseRiseFrom,
      'm',
      `a place short of the nose at ${shown(hull.length, 'm')}`,
    ],
    [
      hull.widestAt.value >= hull.length.value,
      hull.widestAt,
      'm',
      `a place short of the nose at ${shown(hull.length, 'm')}`,
    ],
  ]
  const stations = hull.stations ?? []
  for (let i = 1; i < stations.length; i++)
    tests.push([
      stations[i]!.at.value <= stations[i - 1]!.at.value,
      stations[i]!.at,
      'm',
      `a station forward of the one before at ${shown(stations[i - 1]!.at, 'm')}`,
    ])
  const measured = tests.length
  for (const s of stations) tests.push(...inStation(s))
  // what is wrong inside a station comes first: its size says nothing yet
  if (stations.length >= 3 && !tests.slice(measured).some(([wrong]) => wrong))
    tests.push(...overall(hull, stations))
  return failing(tests)
}

type Station = NonNullable<Craft['hull']['stations']>[number]

/** One half section: from the keel on the centreline out and up to the deck, in the order the points lie. */
function inStation({ points }: Station): Test[] {
  const keel = points[0]![0]
  const tests: Test[] = [
    [Math.abs(keel.value) > 1e-9, keel, 'mm', 'the keel first, on the centreline: 0 mm out'],
  ]
  for (const [out] of points)
    tests.push([
      out.value < 0,
      out,
      'mm',
      'a half-breadth of 0 or more: give one side only, the other is alike',
    ])
  const k = crossing(points.map(([out, up]) => [out.value, up.value] as const))
  if (k >= 0)
    tests.push([
      true,
      points[k]![1],
      'mm',
      'points in the order they lie, from the keel out and up to the deck; the line through these crosses itself here',
    ])
  return tests
}

/** Index of the first point whose piece of the line crosses an earlier piece; −1 when none does. */
function crossing(p: readonly (readonly [number, number])[]): number {
  const side = (a: number, b: number, c: number) =>
    (p[b]![0] - p[a]![0]) * (p[c]![1] - p[a]![1]) - (p[b]![1] - p[a]![1]) * (p[c]![0] - p[a]![0])
  for (let j = 2; j + 1 < p.length; j++)
    for (let i = 0; i + 1 < j; i++)
      if (side(i, i + 1, j) * side(i, i + 1, j + 1) < 0 && side(j, j + 1, i) * side(j, j + 1, i + 1) < 0)
        return j
  return -1
}

/** Length and beam written beside stations that are of another size. */
function overall(hull: Craft['hull'], stations: readonly Station[]): Test[] {
  const long = stations.at(-1)!.at.value - stations[0]!.at.value
  const wide = 2 * Math.max(...stations.flatMap((s) => s.points.map(([out]) => out.value)))
  const apart = (a: number, b: number) => Math.abs(a - b) > 0.05 * b
  const metres = (v: number) => formatQuantity(v, 'length', 'm', 3)
  return [
    [
      apart(hull.length.value, long),
      hull.length,
      'm',
      `about the ${metres(long)} from the first station to the last, which count`,
      'warning',
    ],
    [
      apart(hull.beam.value, wide),
      hull.beam,
      'm',
      `about the ${metres(wide)} of the widest station, which counts`,
      'warning',
    ],
  ]
}
