/** Figures of the Strength page: a deck bay in section, what it does as the load grows, options against each other, foam beside a hot part. */

import { inMm, inNewtons } from '../../base/answers/amounts.ts'
import { printed, printedAmount, say } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { type DisplaySystem, displayUnit } from '../../base/units/format.ts'
import type { Kind } from '../../base/units/kinds.ts'
import { proseIn } from '../../base/units/prose.ts'
import { lineChart } from '../../drawing/chart.ts'
import type { ChartSeries } from '../../drawing/chartSpec.ts'
import { dimension } from '../../drawing/dimension.ts'
import { hatch } from '../../drawing/hatching.ts'
import { line, polygon, polyline, rectangle, text } from '../../drawing/marks.ts'
import { faint, ink, okabeIto, quiet } from '../../drawing/palette.ts'
import type { Mark, Sheet } from '../../drawing/sheet.ts'
import { gravity } from '../../physics/fluid/water.ts'
import { type DeckAnswer, type DeckBay, deckBay } from './deckBay.ts'

/** m in words, as few digits as tell it: "1.5 mm", "0.059 in" */
const lengthIn = (x: number, system: DisplaySystem) => proseIn(`${+(1e3 * x).toFixed(1)} mm`, system)
const inUnit = (kind: Kind, hint: string, system: DisplaySystem) => {
  const unit = displayUnit(kind, system, hint)
  return { unit, of: (v: number) => fromSi(v, kind, unit) }
}

/** A bay cut across, to scale, with the foot of the governing load standing on it; thin sheet is drawn no thinner than can be seen. */
export function sectionFigure(answer: DeckAnswer, width = 180, system: DisplaySystem = 'metric'): Sheet {
  const { bay } = answer
  const mm = (x: number) => lengthIn(x, system)
  const s = bay.support
  const under = s.kind === 'foam' ? s.depth : s.kind === 'sandwich' ? s.core + s.inner : stringerHeight(bay)
  // one scale for everything; a very deep bed is broken off so that the sheet can still be seen
  const shown = Math.min(under, 0.5 * bay.width)
  const scale = (width - 44) / bay.width
  // what is drawn is to scale; a shallow one still has room below for its words
  const depth = shown * scale
  const room = Math.max(12, depth)
  const left = 22
  const right = left + bay.width * scale
  const top = room + 18
  const sheet = Math.max(0.7, bay.t * scale)
  const height = top + 34
  const marks: Mark[] = [
    text(4, height - 5, `${bay.name}, cut across`, { size: 3.4, bold: true }),
    rectangle(left, top, right - left, sheet, { fill: ink }, 'data'),
    ...underMarks(bay, left, right, top, scale, depth, under > shown),
  ]
  // its edges: what the sheet is fixed to
  for (const x of [left, right])
    marks.push(
      polygon([x - 2.2, top - 4, x + 2.2, top - 4, x, top], { stroke: ink, width: 0.3, fill: faint }, 'data'),
    )
  const foot = footWidth(answer)
  const middle = (left + right) / 2 + scale * asideOf(answer)
  const half = (Math.min(foot, bay.width) * scale) / 2
  marks.push(
    rectangle(middle - half, top + sheet, 2 * half, 1.6, { fill: okabeIto.vermillion, opacity: 0.7 }, 'data'),
    line(
      middle,
      top + sheet + 11,
      middle,
      top + sheet + 2.4,
      { stroke: okabeIto.vermillion, width: 0.5 },
      'data',
    ),
    polygon(
      [middle - 1, top + sheet + 4, middle + 1, top + sheet + 4, middle, top + sheet + 1.8],
      { fill: okabeIto.vermillion },
      'data',
    ),
    text(
      middle + 2,
      top + sheet + 8,
      `${loadWord[answer.governs.load]}, ${printedAmount(inNewtons(answer.governs.force), system)}`,
      {
        size: 2.8,
      },
    ),
    ...dimension(left, top - room - 2, right, top - room - 2, -5, mm(bay.width)),
    text(right + 3, top + sheet / 2 - 1, mm(bay.t), { size: 2.8 }),
  )
  if (s.kind !== 'alone') marks.push(...dimension(left, top - depth, left, top, 7, mm(under)))
  const says = `${bay.name}: ${proseIn(buildWords(bay), system)}, ${mm(bay.length)} by ${mm(bay.width)}; drawn to scale across its width.`
  return { width, height, title: `${bay.name}, cut across`, says, marks }
}

const loadWord = { standing: 'standing', step: 'a hard step', jump: 'a jump' } as const

/** Side of the governing load's patch across the bay, m: a foot turned to fit, as `deckBay` turns it. */
function footWidth(answer: DeckAnswer): number {
  const { bay, governs } = answer
  const [u, v] =
    governs.load === 'standing' ? [0.25, 0.1] : governs.load === 'step' ? [0.08, 0.08] : [0.25, 0.2]
  return bay.length >= bay.width ? Math.min(u, v) : Math.max(u, v)
}

/** Stringers drawn across a bay. */
const stringersOf = (width: number, spacing: number): number => Math.max(1, Math.round(width / spacing) - 1)

/** How far off the bay's middle the load stands, m: between two stringers where the sheet gives first, on one where they do. */
function asideOf({ bay, governs }: DeckAnswer): number {
  const s = bay.support
  if (s.kind !== 'stringers') return 0
  const odd = stringersOf(bay.width, s.spacing) % 2 === 1
  return odd === (governs.weakest === 'stringer') ? 0 : s.spacing / 2
}

/** Height of a hat section, m: its top plate stands off by its depth. */
function stringerHeight(bay: DeckBay): number {
  return bay.support.kind === 'stringers' ? bay.support.section.height : 0
}

/** What a bay is built of, in words. */
export function buildWords(bay: DeckBay): string {
  const s = bay.support
  const mm = (x: number) => lengthIn(x, 'metric')
  const sheet = `${mm(bay.t)} ${bay.alloy.id} sheet`
  switch (s.kind) {
    case 'alone':
      return `${sheet} by itself`
    case 'stringers':
      return `${sheet} on hats ${mm(s.section.height)} high every ${mm(s.spacing)}`
    case 'foam':
      return `${sheet} on ${mm(s.depth)} of ${s.foam.id}`
    case 'sandwich':
      return `${sheet} on ${mm(s.core)} of ${s.foam.id} with ${mm(s.inner)} under it`
  }
}

function underMarks(
  bay: DeckBay,
  left: number,
  right: number,
  top: number,
  scale: number,
  depth: number,
  broken: boolean,
): Mark[] {
  const s = bay.support
  if (s.kind === 'alone') return []
  if (s.kind === 'stringers') {
    const tall = s.section.height * scale
    const wide = 0.03 * scale
    const count = stringersOf(bay.width, s.spacing)
    return Array.from({ length: count }, (_, i) => {
      const x = (left + right) / 2 + (i - (count - 1) / 2) * s.spacing * scale
      const hat = [
        x - wide,
        top,
        x - wide / 2,
        top,
        x - wide / 2.4,
        top - tall,
        x + wide / 2.4,
        top - tall,
        x + wide / 2,
        top,
        x + wide,
        top,
      ]
      return polyline(hat, { stroke: ink, width: 0.6 }, 'data')
    })
  }
  const inner = s.kind === 'sandwich' ? Math.max(0.7, s.inner * scale) : 0
  const foot = top - depth + inner
  const box = [left, foot, right, foot, right, top, left, top]
  const marks: Mark[] = [
    ...hatch([box], 2.4, Math.PI / 4, { stroke: okabeIto.blue, width: 0.18 }),
    polygon(box, { stroke: okabeIto.blue, width: 0.3 }, 'data'),
    text((left + right) / 2, (top + foot) / 2 - 1, s.foam.id, { size: 3, anchor: 'middle', halo: true }),
  ]
  if (inner > 0) marks.push(rectangle(left, foot - inner, right - left, inner, { fill: ink }, 'data'))
  else marks.push(...ground(left, right, foot, broken))
  return marks
}

/** The firm thing a foam bed stands on; dashed when the bed is deeper than drawn. */
function ground(left: number, right: number, y: number, broken: boolean): Mark[] {
  return [
    line(left, y, right, y, { stroke: ink, width: 0.5, ...(broken ? { dash: [3, 1.5] } : {}) }, 'data'),
    ...(broken
      ? [text(right, y + 1, 'goes on deeper', { size: 2.4, anchor: 'end', colour: quiet, halo: true })]
      : []),
  ]
}

export interface LoadSweep {
  /** N on an 80 mm patch, one heel or knee */
  force: Float64Array
  /** m */
  deflection: Float64Array
  bendingOnly: Float64Array
  /** each part's stress or pressure over what it may have under a step; NaN where the bay has no such part */
  skin: Float64Array
  foam: Float64Array
  stringer: Float64Array
  core: Float64Array
}

/** The bay under a step that grows from nothing to four times the rider's weight. */
export function loadSweep(bay: DeckBay, rider: number, count = 16): LoadSweep {
  const rows = Array.from({ length: count }, (_, i) => {
    // a step is twice the weight: asking for a lighter or heavier rider sweeps the load
    const part = (2 * (i + 1)) / count
    return deckBay(bay, rider * part, 293.15, 29).loads.find((l) => l.load === 'step')!
  })
  const of = (pick: (l: (typeof rows)[number]) => number) => Float64Array.from([0, ...rows.map(pick)])
  const share = (part: { stress: number; allowed: number } | undefined) =>
    part ? part.stress / part.allowed : Number.NaN
  const none = (a: Float64Array) => {
    // nothing at no load, unless there is no such part at all
    if (Number.isNaN(a[1]!)) a[0] = Number.NaN
    return a
  }
  return {
    force: of((l) => l.force),
    deflection: of((l) => l.deflection),
    bendingOnly: of((l) => l.bendingOnly),
    skin: of((l) => l.stress / l.allowed),
    foam: none(of((l) => (l.foam ? l.foam.pressure / l.foam.allowed : Number.NaN))),
    stringer: none(of((l) => share(l.stringer))),
    core: none(of((l) => share(l.core))),
  }
}

/** Deflection against load; the tried build dashed. mm. */
export function deflectionFigure(
  now: LoadSweep,
  tried: LoadSweep | undefined,
  rider: number,
  width = 180,
  system: DisplaySystem = 'metric',
): Sheet {
  const force = inUnit('force', 'N', system)
  const gives = inUnit('length', 'mm', system)
  const series = (s: LoadSweep, word: string): ChartSeries => ({
    name: `gives${word}`,
    x: s.force.map(force.of),
    y: s.deflection.map(gives.of),
    colour: okabeIto.blue,
    tried: word !== '',
  })
  const last = now.deflection.length - 1
  const linear = now.bendingOnly[last]! > 1.05 * now.deflection[last]!
  return lineChart({
    title: 'How far it gives under one heel or knee',
    says: proseIn(
      printed(
        say`Under a hard step of ${inNewtons(2 * rider * gravity)} on 80 mm it gives ${inMm(at(now, 'deflection', 2 * rider * gravity), 0.1)}.`,
        system,
      ),
      system,
    ),
    width,
    height: 78,
    x: { label: 'load', unit: force.unit },
    y: { label: 'deflection', unit: gives.unit, include: [0] },
    series: [
      series(now, ''),
      ...(tried ? [series(tried, ', tried')] : []),
      ...(linear
        ? [
            {
              name: 'bending alone would say',
              x: now.force.map(force.of),
              y: now.bendingOnly.map((v) => (v > 2.2 * now.deflection[last]! ? Number.NaN : gives.of(v))),
              colour: quiet,
              dash: [1, 1],
              signs: false,
            },
          ]
        : []),
    ],
    lines: loadLines(rider, force.of),
  })
}

/** Each part's share of what it may have, against load; above 100 % it crushes, dishes or breaks. */
export function shareFigure(
  now: LoadSweep,
  tried: LoadSweep | undefined,
  rider: number,
  width = 180,
  system: DisplaySystem = 'metric',
): Sheet {
  const force = inUnit('force', 'N', system)
  const parts = [
    ['skin', 'sheet', okabeIto.vermillion],
    ['foam', 'foam', okabeIto.blue],
    ['stringer', 'stringers', okabeIto.green],
    ['core', 'core in shear', okabeIto.purple],
  ] as const
  const series = parts.flatMap(([key, name, colour]): ChartSeries[] => {
    const one = (s: LoadSweep, word: string): ChartSeries[] =>
      Number.isNaN(s[key][1]!)
        ? []
        : [
            {
              name: `${name}${word}`,
              x: s.force.map(force.of),
              y: s[key].map((v) => 100 * v),
              colour,
              tried: word !== '',
            },
          ]
    return [...one(now, ''), ...(tried ? one(tried, ', tried') : [])]
  })
  const step = 2 * rider * gravity
  const words = parts.flatMap(([key, name]) =>
    Number.isNaN(now[key][1]!) ? [] : [`${name} ${Math.round(100 * at(now, key, step))} %`],
  )
  return lineChart({
    title: 'Share of what each part may have',
    says: printed(
      say`Under a hard step of ${inNewtons(step)}: ${words.join(', ')} of what each may have.`,
      system,
    ),
    width,
    height: 88,
    x: { label: 'load', unit: force.unit },
    y: { label: 'of what it may have', unit: '%', include: [0, 110] },
    series,
    lines: [
      { axis: 'y', at: 100, label: 'may have', colour: okabeIto.vermillion, dash: [2, 1] },
      ...loadLines(rider, force.of),
    ],
  })
}

const loadLines = (rider: number, of: (force: number) => number) => [
  { axis: 'x' as const, at: of(rider * gravity), label: 'on one foot', colour: quiet, dash: [1, 1] },
  { axis: 'x' as const, at: of(2 * rider * gravity), label: 'hard step', colour: quiet, dash: [1, 1] },
]

/** Value of a sweep at a force, straight between its points. */
function at(s: LoadSweep, key: keyof LoadSweep, force: number): number {
  const i = Math.max(
    1,
    s.force.findIndex((f) => f >= force - 1e-6),
  )
  const part = (force - s.force[i - 1]!) / (s.force[i]! - s.force[i - 1]!)
  return s[key][i - 1]! + part * (s[key][i]! - s[key][i - 1]!)
}
