/**
 * Threads there are, and how common each is. Metric: ISO 261 diameters and pitches; unified: ASME B1.1 coarse, fine, extra fine and the
 * constant series; pipe: ISO 228-1; from memory, the pipe sizes to 3/4 compared with a printed table. How common: judgement, no source.
 */
import { metricThread, pipeThread, type Thread, unifiedThread } from './threadForms.ts'

export interface KnownThread {
  thread: Thread
  /** how often it turns up among threads of its size, against a common coarse metric one */
  common: number
  /** unified: counts its own diameter as the length engaged (coarse and fine), else nine pitches */
  ownLength?: boolean
}

/** diameter, coarse pitch (0 where there is none), fine pitches; mm. The third choice of the standard is marked by a last 3. */
type MetricRow = readonly [d: number, coarse: number, ...fine: number[]]

const metricRows: readonly MetricRow[] = [
  [1, 0.25, 0.2],
  [1.2, 0.25, 0.2],
  [1.4, 0.3, 0.2],
  [1.6, 0.35, 0.2],
  [1.8, 0.35, 0.2],
  [2, 0.4, 0.25],
  [2.5, 0.45, 0.35],
  [3, 0.5, 0.35],
  [3.5, 0.6, 0.35],
  [4, 0.7, 0.5],
  [5, 0.8, 0.5],
  [6, 1, 0.75],
  [7, 1, 0.75],
  [8, 1.25, 1, 0.75],
  [9, 1.25, 1, 0.75],
  [10, 1.5, 1.25, 1, 0.75],
  [11, 1.5, 1, 0.75],
  [12, 1.75, 1.5, 1.25, 1],
  [14, 2, 1.5, 1.25, 1],
  [15, 0, 1.5, 1],
  [16, 2, 1.5, 1],
  [17, 0, 1.5, 1],
  [18, 2.5, 2, 1.5, 1],
  [20, 2.5, 2, 1.5, 1],
  [22, 2.5, 2, 1.5, 1],
  [24, 3, 2, 1.5, 1],
  [25, 0, 2, 1.5, 1],
  [26, 0, 1.5],
  [27, 3, 2, 1.5, 1],
  [28, 0, 2, 1.5, 1],
  [30, 3.5, 3, 2, 1.5, 1],
  [32, 0, 2, 1.5],
  [33, 3.5, 3, 2, 1.5],
  [35, 0, 1.5],
  [36, 4, 3, 2, 1.5],
  [38, 0, 1.5],
  [39, 4, 3, 2, 1.5],
  [40, 0, 3, 2, 1.5],
  [42, 4.5, 4, 3, 2, 1.5],
  [45, 4.5, 4, 3, 2, 1.5],
  [48, 5, 4, 3, 2, 1.5],
  [50, 0, 3, 2, 1.5],
  [52, 5, 4, 3, 2, 1.5],
  [55, 0, 4, 3, 2, 1.5],
  [56, 5.5, 4, 3, 2, 1.5],
  [58, 0, 4, 3, 2, 1.5],
  [60, 5.5, 4, 3, 2, 1.5],
  [62, 0, 4, 3, 2, 1.5],
  [64, 6, 4, 3, 2, 1.5],
  [65, 0, 4, 3, 2, 1.5],
  [68, 6, 4, 3, 2, 1.5],
  [70, 0, 6, 4, 3, 2, 1.5],
  [72, 0, 6, 4, 3, 2, 1.5],
  [75, 0, 4, 3, 2, 1.5],
  [76, 0, 6, 4, 3, 2, 1.5],
  [80, 0, 6, 4, 3, 2, 1.5],
  [85, 0, 6, 4, 3, 2],
  [90, 0, 6, 4, 3, 2],
  [95, 0, 6, 4, 3, 2],
  [100, 0, 6, 4, 3, 2],
  [105, 0, 6, 4, 3, 2],
  [110, 0, 6, 4, 3, 2],
  [115, 0, 6, 4, 3, 2],
  [120, 0, 6, 4, 3, 2],
  [125, 0, 8, 6, 4, 3, 2],
  [130, 0, 8, 6, 4, 3, 2],
  [140, 0, 8, 6, 4, 3, 2],
  [150, 0, 8, 6, 4, 3, 2],
  [160, 0, 8, 6, 4, 3],
  [170, 0, 8, 6, 4, 3],
  [180, 0, 8, 6, 4, 3],
  [190, 0, 8, 6, 4, 3],
  [200, 0, 8, 6, 4, 3],
]

/** preferred diameters of the standard: its first column, and the ones fittings and caps are made in */
const preferred = new Set([
  1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 30, 36, 42, 48, 56, 64, 72, 80, 90, 100, 110, 125,
  140, 160, 180, 200,
])
/** fine threads met again and again on fittings, plugs, caps and sensors, as d × pitch: judgement, no source */
const fittings = new Set([
  '10×1',
  '12×1.5',
  '14×1.5',
  '14×1.25',
  '16×1.5',
  '18×1.5',
  '20×1.5',
  '22×1.5',
  '24×1.5',
  '26×1.5',
  '27×2',
  '28×1.5',
  '30×1.5',
  '30×2',
  '33×2',
  '36×2',
  '42×2',
  '48×2',
  '60×2',
  '90×3',
  '100×2',
])

const metric = (): KnownThread[] =>
  metricRows.flatMap(([d, coarse, ...fine]) => {
    const rank = preferred.has(d) ? 1 : 0.4
    const made = (pitch: number, common: number) => ({ thread: metricThread(1e-3 * d, 1e-3 * pitch), common })
    return [
      ...(coarse > 0 ? [made(coarse, rank)] : []),
      ...fine.map((p) => made(p, fittings.has(`${d}×${p}`) ? 0.6 : 0.15 * rank)),
    ]
  })

/** nominal size: name, inches, threads an inch of coarse, fine and extra fine (0 where none) */
const unifiedRows: readonly (readonly [
  name: string,
  inches: number,
  unc: number,
  unf: number,
  unef: number,
])[] = [
  ['#2', 0.086, 56, 64, 0],
  ['#4', 0.112, 40, 48, 0],
  ['#5', 0.125, 40, 44, 0],
  ['#6', 0.138, 32, 40, 0],
  ['#8', 0.164, 32, 36, 0],
  ['#10', 0.19, 24, 32, 0],
  ['#12', 0.216, 24, 28, 32],
  ['1/4', 0.25, 20, 28, 32],
  ['5/16', 0.3125, 18, 24, 32],
  ['3/8', 0.375, 16, 24, 32],
  ['7/16', 0.4375, 14, 20, 28],
  ['1/2', 0.5, 13, 20, 28],
  ['9/16', 0.5625, 12, 18, 24],
  ['5/8', 0.625, 11, 18, 24],
  ['3/4', 0.75, 10, 16, 20],
  ['7/8', 0.875, 9, 14, 20],
  ['1', 1, 8, 12, 20],
  ['1 1/16', 1.0625, 0, 0, 18],
  ['1 1/8', 1.125, 7, 12, 18],
  ['1 3/16', 1.1875, 0, 0, 18],
  ['1 1/4', 1.25, 7, 12, 18],
  ['1 3/8', 1.375, 6, 12, 18],
  ['1 1/2', 1.5, 6, 12, 18],
  ['1 3/4', 1.75, 5, 0, 0],
  ['2', 2, 4.5, 0, 0],
  ['2 1/4', 2.25, 4.5, 0, 0],
  ['2 1/2', 2.5, 4, 0, 0],
  ['3', 3, 4, 0, 0],
]
/** the constant series, from 13/16 in up in sixteenths */
const constant = [8, 12, 16, 20]

function unified(): KnownThread[] {
  const inch = 0.0254
  const out: KnownThread[] = []
  for (const [name, inches, unc, unf, unef] of unifiedRows) {
    const made = (n: number, series: string, common: number) => {
      if (n > 0)
        out.push({
          thread: unifiedThread(inch * inches, n, `${name}-${n} ${series}`),
          common,
          ownLength: series !== 'UNEF',
        })
    }
    made(unc, 'UNC', 0.5)
    made(unf, 'UNF', 0.4)
    made(unef, 'UNEF', 0.08)
  }
  for (let sixteenth = 13; sixteenth <= 48; sixteenth++) {
    const inches = sixteenth / 16
    const named = unifiedRows.find(([, x]) => Math.abs(x - inches) < 1e-9)
    for (const n of constant) {
      if (named && (named[2] === n || named[3] === n || named[4] === n)) continue
      const whole = Math.floor(inches)
      const rest = fraction(sixteenth % 16)
      const name = [...(whole > 0 ? [String(whole)] : []), ...(rest ? [rest] : [])].join(' ')
      out.push({
        thread: unifiedThread(inch * inches, n, `${name}-${n} UN`),
        common: sixteenth % 2 === 0 ? 0.08 : 0.04,
      })
    }
  }
  return out
}

function fraction(sixteenths: number): string {
  if (sixteenths === 0) return ''
  let [a, b] = [sixteenths, 16]
  while (a % 2 === 0) [a, b] = [a / 2, b / 2]
  return `${a}/${b}`
}

/** ISO 228-1: name, over the crests in mm, threads an inch */
export const pipeRows: readonly (readonly [name: string, mm: number, perInch: number])[] = [
  ['G 1/16', 7.723, 28],
  ['G 1/8', 9.728, 28],
  ['G 1/4', 13.157, 19],
  ['G 3/8', 16.662, 19],
  ['G 1/2', 20.955, 14],
  ['G 5/8', 22.911, 14],
  ['G 3/4', 26.441, 14],
  ['G 7/8', 30.201, 14],
  ['G 1', 33.249, 11],
  ['G 1 1/8', 37.897, 11],
  ['G 1 1/4', 41.91, 11],
  ['G 1 1/2', 47.803, 11],
  ['G 1 3/4', 53.746, 11],
  ['G 2', 59.614, 11],
  ['G 2 1/4', 65.71, 11],
  ['G 2 1/2', 75.184, 11],
  ['G 2 3/4', 81.534, 11],
  ['G 3', 87.884, 11],
  ['G 3 1/2', 100.33, 11],
  ['G 4', 113.03, 11],
]
const seldom = new Set(['G 1/16', 'G 5/8', 'G 7/8', 'G 1 1/8', 'G 1 3/4', 'G 2 1/4', 'G 2 3/4', 'G 3 1/2'])

const pipes = (): KnownThread[] =>
  pipeRows.map(([name, mm, perInch]) => ({
    thread: pipeThread(name, 1e-3 * mm, perInch),
    common: seldom.has(name) ? 0.1 : 0.6,
  }))

/** Every thread there is a table for; made once. */
export const knownThreads: readonly KnownThread[] = [...metric(), ...unified(), ...pipes()]

/** A pipe thread by its name; RangeError naming the ones there are. */
export function pipeThreadOf(name: string): Thread {
  const row = pipeRows.find(([n]) => n === name)
  if (!row) throw new RangeError(`size: "${name}" is not one of ${pipeRows.map(([n]) => n).join(', ')}`)
  return pipeThread(row[0], 1e-3 * row[1], row[2])
}
