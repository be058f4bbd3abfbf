/**
 * The best pipe by pattern search: one number at a time up and down, the better side kept, a further step the way that
 * helped, steps halved when nothing helps (R. Hooke and T. A. Jeeves, J. ACM 8 (1961) 212). No slopes are used: simulated
 * curves have kinks. What a pipe is worth is handed in; this file knows no engine.
 */
import { canBeMade, type PipeShape } from './pipeShape.ts'

/** The numbers that are turned, and the first step of each as a part. */
export const steps = {
  /** all lengths between flange and stinger together */
  length: 0.03,
  header: 0.12,
  headerEnd: 0.03,
  bellyBore: 0.06,
  horn: 0.15,
  baffle: 0.08,
  stingerBore: 0.05,
  stinger: 0.15,
} as const
export type Turned = keyof typeof steps

/** A shape with one number multiplied. Header and baffle give or take their change from the diffuser, so that the tuned length stays. */
export function turned(s: PipeShape, what: Turned, by: number): PipeShape {
  switch (what) {
    case 'length':
      return {
        ...s,
        header: s.header * by,
        diffuser: s.diffuser * by,
        belly: s.belly * by,
        baffle: s.baffle * by,
      }
    case 'header':
      return { ...s, header: s.header * by, diffuser: s.diffuser - s.header * (by - 1) }
    case 'baffle':
      return { ...s, baffle: s.baffle * by, diffuser: s.diffuser - s.baffle * (by - 1) }
    default:
      return { ...s, [what]: s[what] * by }
  }
}

/** What several shapes are worth, larger better; NaN or less than any number for one that cannot run. */
export type Worth = (shapes: readonly PipeShape[]) => Promise<number[]>

export interface SearchOptions {
  /** times the steps are halved after the first round */
  halvings?: number
  /** most shapes looked at */
  most?: number
  progress?: (part: number, best: number) => void
  cancelled?: () => boolean
}

export interface SearchResult {
  best: PipeShape
  worth: number
  /** the best few that were met, best first, for a finer look */
  leaders: { shape: PipeShape; worth: number }[]
  looked: number
  cancelled: boolean
}

const keep = 4

/** Pattern search from `start`. Deterministic: the same worths give the same answer. */
export async function searchPipe(
  start: PipeShape,
  worth: Worth,
  options: SearchOptions = {},
): Promise<SearchResult> {
  const halvings = options.halvings ?? 2
  const most = options.most ?? 110
  const names = Object.keys(steps) as Turned[]
  const seen = new Map<string, number>()
  const leaders: SearchResult['leaders'] = []
  let looked = 0
  const value = async (shapes: readonly PipeShape[]): Promise<number[]> => {
    const key = (s: PipeShape) => JSON.stringify(s)
    const fresh = shapes.filter((s) => canBeMade(s) && !seen.has(key(s)))
    const got = fresh.length > 0 ? await worth(fresh) : []
    looked += fresh.length
    fresh.forEach((shape, i) => {
      const w = Number.isFinite(got[i]!) ? got[i]! : Number.NEGATIVE_INFINITY
      seen.set(key(shape), w)
      leaders.push({ shape, worth: w })
    })
    leaders.sort((a, b) => b.worth - a.worth)
    leaders.length = Math.min(keep, leaders.length)
    return shapes.map((s) => seen.get(key(s)) ?? Number.NEGATIVE_INFINITY)
  }
  let best = start
  let bestWorth = (await value([start]))[0]!
  const done = (cancelled: boolean): SearchResult => ({ best, worth: bestWorth, leaders, looked, cancelled })

  for (let halved = 0; halved <= halvings; ) {
    const before = best
    let helped = false
    for (const name of names) {
      if (options.cancelled?.()) return done(true)
      if (looked >= most) return done(false)
      options.progress?.(Math.min(1, looked / most), bestWorth)
      const by = 1 + steps[name] / 2 ** halved
      const sides = [turned(best, name, by), turned(best, name, 1 / by)]
      const worths = await value(sides)
      const side = worths[1]! > worths[0]! ? 1 : 0
      if (worths[side]! > bestWorth) {
        bestWorth = worths[side]!
        best = sides[side]!
        helped = true
      }
    }
    if (helped) {
      // one step on, the same way again
      const on = further(before, best)
      const [w] = await value([on])
      if (w! > bestWorth) {
        bestWorth = w!
        best = on
      }
    } else halved++
  }
  return done(false)
}

/** As far beyond `to` as `to` is from `from`, in ratios. */
function further(from: PipeShape, to: PipeShape): PipeShape {
  const out = { ...to }
  for (const key of Object.keys(to) as (keyof PipeShape)[]) out[key] = to[key] * (to[key] / from[key])
  return out
}
