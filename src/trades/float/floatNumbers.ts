/** The float answer in tables: loads, openings, foam, weights. */
import { inDegrees, inMetres, inSeconds } from '../../base/answers/amounts.ts'
import type { Amount } from '../../base/answers/sentence.ts'
import type { NumberTable, Solved } from '../trade.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import type { FloatFromCraft } from './floatFromCraft.ts'
import { floatLimits, watchHeight } from './floatLimits.ts'
import { cm, kg, litres } from './floatSay.ts'
import type { LoadCase } from './loadCase.ts'

type Cell = string | Amount
type FloatSolved = Solved<FloatFromCraft, FloatAnswer>

const known = (value: number, make: (v: number) => Amount): Cell =>
  Number.isFinite(value) ? make(value) : '–'

/** Rows of now, and of what is tried under those that it moves. */
function withTried<T>(
  now: readonly T[],
  tried: readonly T[] | undefined,
  nameOf: (of: T) => string,
  cells: (of: T) => readonly Cell[],
): (readonly Cell[])[] {
  return now.flatMap((own, i) => {
    const row = cells(own)
    const other = tried?.[i]
    const moved = other && cells(other)
    const rows: (readonly Cell[])[] = [[nameOf(own), ...row]]
    if (other && moved && JSON.stringify(moved) !== JSON.stringify(row))
      rows.push([`${nameOf(other)}, tried`, ...moved])
    return rows
  })
}

function loadCells(c: LoadCase): Cell[] {
  const stays = !c.sinks && !c.over
  const where = (v: number) => (stays ? known(v, cm) : '–')
  return [
    kg(c.mass),
    where(c.draftAft),
    where(c.draftFore),
    where(c.freeboard),
    stays ? inDegrees(c.attitude.trim) : '–',
    stays ? inDegrees(c.attitude.heel) : '–',
    known(c.gmRigid, cm),
    known(c.gmFeet, cm),
    known(c.rollPeriod, inSeconds),
    c.sinks ? 'sinks' : c.over ? 'rolls over or stands on end' : 'stays',
  ]
}

export function floatNumbers(now: FloatSolved, tried?: FloatSolved): NumberTable[] {
  const { answer } = now
  return [
    {
      caption: 'Loads',
      heads: [
        'Load',
        'All told',
        'Stern deep',
        'Bow deep',
        'Deck edge above',
        'Trim, bow up',
        'Heel, to port',
        'GM, stiff rider',
        'GM, balancing',
        'Roll',
        'Ends up',
      ],
      rows: withTried(answer.cases, tried?.answer.cases, (c) => c.name, loadCells),
    },
    {
      caption: 'Openings: height above water',
      heads: ['Opening', 'Kind', ...answer.openingStates, 'advised at rest'],
      rows: withTried(
        answer.openings,
        tried?.answer.openings,
        (r) => r.opening.name,
        (r) => [
          r.opening.kind,
          ...answer.openingStates.map((_, i) => known(r.heights[i] ?? Number.NaN, cm)),
          known(watchHeight(r.opening.kind, floatLimits), cm),
        ],
      ),
    },
    {
      caption: 'Foam',
      heads: ['Block', 'Inside the hull', 'Lifts', 'Middle, forward', 'Middle, up'],
      rows: [
        ...withTried(
          answer.foam,
          tried?.answer.foam,
          (f) => f.block.name,
          (f) => [litres(f.volume), kg(f.lift), inMetres(f.centre[0]), inMetres(f.centre[2])],
        ),
        ...(tried ?? now).answer.need.blocks.map((b) => [
          `${b.name} (still wanted)`,
          litres(b.held),
          kg(b.held * (tried ?? now).answer.need.lift),
          inMetres((b.low[0] + b.high[0]) / 2),
          inMetres((b.low[2] + b.high[2]) / 2),
        ]),
      ],
    },
  ]
}
