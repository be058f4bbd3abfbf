/** Speeds of each stretch beside those of the likeliest story, severities taken where they fit best; and the picture of both. */
import { inRpm } from '../../base/answers/amounts.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Atom } from './atoms.ts'
import type { HeardEpisode } from './episodes.ts'
import type { BesideEpisode } from './rankingTypes.ts'
import { type Line, type RootTable, severities } from './roots.ts'
import type { Story } from './stories.ts'

const atWork = (a: Atom, k: number) => a.onset <= k && k < a.until

function linesAt(
  story: readonly Atom[],
  k: number,
  roots: RootTable,
  shared: boolean,
  severity: number,
): number[] {
  let dead = 0
  let open = 0
  for (const a of story) {
    if (!atWork(a, k)) continue
    dead |= a.dead
    open = shared ? Math.max(open, a.open) : open | a.open
  }
  const reaches = (a: Atom, l: Line) => l.pushes && (shared || l.engines.some((e) => a.engines.includes(e)))
  return roots.lines({ dead, open }).map((l) => {
    const moved = story.reduce(
      (m, a) => m + (a.shift && atWork(a, k) && reaches(a, l) ? a.shift[severity]! : 0),
      0,
    )
    return l.rotation * Math.exp(moved)
  })
}

const nearest = (heard: number, told: readonly number[]) =>
  Math.min(...told.map((t) => Math.abs(Math.log(heard / t))), 1)

/** Every stretch with a sound: what was heard, and what the likeliest story has there, rev/s. */
export function besideOf(
  episodes: readonly HeardEpisode[],
  atoms: readonly Atom[],
  story: Story | undefined,
  roots: RootTable | undefined,
  shared: boolean,
): BesideEpisode[] {
  if (!roots || !story) return []
  const own = story.atoms.map((i) => atoms[i]!)
  const off = (v: number) =>
    episodes.reduce((sum, e, k) => {
      const told = linesAt(own, k, roots, shared, v)
      return sum + e.lines.reduce((s, l) => s + Math.min(0.3, nearest(l.rotation, told)) * (e.to - e.from), 0)
    }, 0)
  const best = severities.map((_, v) => v).sort((a, b) => off(a) - off(b))[0]!
  return episodes.flatMap((e, k) =>
    e.lines.length > 0
      ? [
          {
            from: e.from,
            to: e.to,
            heard: e.lines.map((l) => l.rotation),
            told: linesAt(own, k, roots, shared, best),
          },
        ]
      : [],
  )
}

/** Both as lines over time; dashed what the likeliest story asks for. */
export function besideStoryFigure(beside: readonly BesideEpisode[], width: number): Sheet {
  const most = (pick: (b: BesideEpisode) => readonly number[]) =>
    Math.max(0, ...beside.map((b) => pick(b).length))
  const line = (pick: (b: BesideEpisode) => readonly number[], n: number) => ({
    x: beside.flatMap((b) => [b.from, b.to, b.to]),
    y: beside.flatMap((b) => [60 * (pick(b)[n] ?? Number.NaN), 60 * (pick(b)[n] ?? Number.NaN), Number.NaN]),
  })
  const heard = (b: BesideEpisode) => [...b.heard].sort((x, y) => y - x)
  const told = (b: BesideEpisode) => [...b.told].sort((x, y) => y - x)
  return lineChart({
    title: 'Heard, and as the likeliest story has it',
    says: 'Engine speed over the recording as it was heard and as the likeliest story has it.',
    width,
    height: 62,
    x: { label: 'time', unit: 's' },
    y: { label: 'engine', unit: inRpm(1).unit, include: [0] },
    series: [
      ...Array.from({ length: most(heard) }, (_, n) => ({
        name: n === 0 ? 'heard' : 'heard, slower',
        ...line(heard, n),
      })),
      ...Array.from({ length: most(told) }, (_, n) => ({
        name: n === 0 ? 'story' : 'story, slower',
        ...line(told, n),
        dash: [2, 1.2],
        signs: false,
      })),
    ],
    empty: 'Nothing was heard that a story could be laid beside.',
  })
}
