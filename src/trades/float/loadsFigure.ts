/** The loads side by side: nobody, prone, kneeling, standing, and swamped, each on its own waterline, now and with what is tried. */
import { inCm, inDegrees, inKg } from '../../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { circle, line, polyline, rectangle, text } from '../../drawing/marks.ts'
import { ink, inkOf, okabeIto, quiet } from '../../drawing/palette.ts'
import { type Posture, riderFigure } from '../../drawing/riderFigure.ts'
import type { Mark, Sheet, Style } from '../../drawing/sheet.ts'
import { wrapText } from '../../drawing/textWidth.ts'
import { deckHeight, type Hull } from '../../hull/lines/hullBody.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { trimSays } from './floatSay.ts'
import type { LoadCase } from './loadCase.ts'
import { joinedRuns, outline, project } from './outline.ts'

export interface LoadsPicture {
  hull: Hull
  cases: readonly LoadCase[]
  /** who is drawn aboard */
  rider?: { x: number; y: number; stature: number }
  /** the same loads as they lie now, while something else is tried */
  before?: { hull: Hull; cases: readonly LoadCase[] }
  system?: DisplaySystem
}

/** Every load from the side, all to one scale. Four in a row where there is room, two, or one. */
export function loadsFigure(picture: LoadsPicture, width = 180): Sheet {
  const { hull, cases, system = 'metric' } = picture
  const across = width >= 250 ? 4 : width >= 150 ? 2 : 1
  const cell = width / across
  const scale = (cell - 12) / (1.06 * hull.length)
  const rows = Array.from({ length: Math.ceil(cases.length / across) }, (_, r) =>
    cases.slice(r * across, (r + 1) * across),
  )
  const heads = rows.map((row) => Math.max(...row.map((c) => headOf(picture, c, cell).length)))
  const talls = rows.map(
    (row, r) =>
      Math.max(...row.map((c) => Math.max(above(picture, c) * scale, stays(c) ? 0 : verdict))) +
      depth(hull) * scale +
      10 +
      4 * heads[r]!,
  )
  const height = talls.reduce((a, b) => a + b, 4)
  let foot = height
  const marks = rows.flatMap((row, r) => {
    foot -= talls[r]!
    return row.flatMap((c, i) => loadMarks(picture, c, i * cell, foot, cell, talls[r]!, scale))
  })
  return {
    width,
    height,
    title: 'The loads side by side',
    says: `From the side, to one scale: ${cases.map((c) => `${c.name}, ${wordsOf(c, system)}`).join('; ')}.`,
    marks,
  }
}

/** what sinks or goes over has no waterline of its own to be drawn at: a word stands there, and wants so many mm */
const stays = (c: LoadCase): boolean => !c.sinks && !c.over
const verdict = 6.5

/** m drawn below the water, and above it: room for the hull, its rider and the common centre of gravity */
const depth = (hull: Hull) => 0.8 * hull.depth
function above(picture: LoadsPicture, c: LoadCase): number {
  const { hull, rider } = picture
  if (!stays(c)) return 0.3 * hull.depth
  const tall = rider ? (tallness[postureOf(c) ?? 'prone'] ?? 0.15) * rider.stature : 0
  const centre = project('side', makeFrame(c.attitude.trim, c.attitude.heel), c.attitude.h, ...c.centre)[1]
  const head = rider && c.name === 'swamped, rider alongside' ? 0.15 * rider.stature : 0
  return Math.max(hull.depth + (postureOf(c) ? tall : 0), head, centre + 0.05)
}

const tallness: Partial<Record<Posture, number>> = { standing: 1, kneeling: 0.72, prone: 0.15 }

/** who is drawn, by the load's name; the rider alongside is in the water */
function postureOf(c: LoadCase): Posture | undefined {
  if (c.name === 'prone' || c.name === 'kneeling' || c.name === 'standing') return c.name
  return c.name === 'swamped, rider aboard' ? 'prone' : undefined
}

/** How one load ends up, in a few words. */
export function loadWords(c: LoadCase): Sentence {
  if (c.sinks) return say`sinks, ${inKg(c.deficit, 1)} too heavy`
  if (c.over) return 'does not stay: it rolls over or stands on end'
  const { trim, heel } = c.attitude
  const lean: Sentence =
    Math.abs(heel) < 0.005 ? '' : say`, ${inDegrees(Math.abs(heel))} to ${heel > 0 ? 'port' : 'starboard'}`
  return say`${inCm(c.draftAft, 0.1)} deep, ${trimSays(trim)}${lean}`
}

const wordsOf = (c: LoadCase, system: DisplaySystem) => printed(loadWords(c), system)

/** lines of words over one load */
function headOf({ before, system = 'metric' }: LoadsPicture, c: LoadCase, cell: number): string[] {
  const old = before?.cases.find((b) => b.name === c.name)
  const moved = old && wordsOf(old, system) !== wordsOf(c, system)
  return [
    ...wrapText(printed(say`${inKg(c.mass, 1)}: ${loadWords(c)}`, system), 2.7, cell - 8),
    ...(moved ? wrapText(`now ${wordsOf(old, system)}`, 2.7, cell - 8) : []),
  ]
}

function loadMarks(
  picture: LoadsPicture,
  c: LoadCase,
  left: number,
  foot: number,
  cell: number,
  tall: number,
  scale: number,
): Mark[] {
  const { hull, rider, before, system = 'metric' } = picture
  const water = foot + 4 + depth(hull) * scale
  const edge = cell - 3
  const marks: Mark[] = [
    text(left + 4, foot + tall - 6, c.name, { size: 3.1, bold: true }),
    ...headOf(picture, c, cell).map((row, i) =>
      text(left + 4, foot + tall - 10.4 - 4 * i, row, { size: 2.7, colour: quiet }),
    ),
    rectangle(
      left + 3,
      foot + 3,
      edge - 3,
      water - foot - 3,
      { fill: okabeIto.skyBlue, opacity: 0.16 },
      'water',
    ),
    line(left + 3, water, left + edge, water, { stroke: okabeIto.blue, width: 0.35 }, 'water'),
  ]
  const start = left + 6
  const old = before?.cases.find((b) => b.name === c.name)
  if (before && old && stays(old) && wordsOf(old, system) !== wordsOf(c, system))
    marks.push(
      ...hullMarks(before.hull, old, start, water, scale, { stroke: quiet, width: 0.3, dash: [1.5, 1] }),
    )
  if (!stays(c)) {
    const words = c.sinks ? 'sinks' : 'does not stay upright'
    return [
      ...marks,
      text(left + cell / 2, water + 2, words, {
        size: 3.1,
        anchor: 'middle',
        bold: true,
        colour: inkOf(okabeIto.vermillion),
        halo: true,
      }),
    ]
  }
  marks.push(...hullMarks(hull, c, start, water, scale, { stroke: ink, width: 0.3 }))
  const f = makeFrame(c.attitude.trim, c.attitude.heel)
  const place = (x: number, y: number, z: number): [number, number] => {
    const [u, v] = project('side', f, c.attitude.h, x, y, z)
    return [start + u * scale, water + v * scale]
  }
  const posture = postureOf(c)
  const style = { stroke: quiet, width: 0.45 }
  if (rider && posture) {
    const y = c.name === 'swamped, rider aboard' ? 0 : rider.y
    const on = place(rider.x, y, deckHeight(hull.mesh, rider.x, y) ?? hull.depth)
    marks.push(...riderFigure(posture, on[0], on[1], rider.stature * scale, style))
  } else if (rider && c.name === 'swamped, rider alongside') {
    const head = 0.065 * rider.stature * scale
    const [x] = place(rider.x, 0, 0)
    marks.push(circle(x, water + head, head, { ...style, fill: '#ffffff' }, 'data'))
  }
  const [x, y] = place(...c.centre)
  const red = { stroke: okabeIto.vermillion, width: 0.5 }
  marks.push(line(x - 1.5, y, x + 1.5, y, red, 'data'), line(x, y - 1.5, x, y + 1.5, red, 'data'))
  return marks
}

function hullMarks(
  hull: Hull,
  c: LoadCase,
  left: number,
  water: number,
  scale: number,
  style: Style,
): Mark[] {
  const f = makeFrame(c.attitude.trim, c.attitude.heel)
  return joinedRuns(outline(hull.mesh, 'side', f, c.attitude.h)).map((run) =>
    polyline(
      run.map((v, i) => (i % 2 === 0 ? left + v * scale : water + v * scale)),
      style,
      'data',
    ),
  )
}
