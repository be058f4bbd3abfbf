/**
 * The search for the best impeller and nozzle of a craft, and for ratio and bore where they can still be chosen. Coarse over
 * everything on the craft as written, finer round the best places, then the places that are left on joint draws of everything
 * doubtful. All roots, no descent: engines with a valley and pumps that choke make hills with cliffs. What is offered in the end is
 * solved again with the whole balance (designAnswer.ts).
 */
import { cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import type { Craft } from '../../craft/index.ts'
import { type Design, designOfCraft, reachOf } from './design.ts'
import type { Case, TrialRequest, TrialResult, Tried } from './designTrials.ts'
import { pitchShares } from './pitchScan.ts'

/** Works requests out, in whatever threads there are; answers in their order. */
export type TryDesigns = (requests: readonly TrialRequest[]) => Promise<TrialResult[]>

/** One kind of blade, nozzle and drive over its pitches, lowest first. */
export interface Line {
  /** its pitch means nothing */
  design: Design
  pitches: number[]
  /** on the craft as written */
  tried: Tried[]
}

/** A line on every draw: `tried[k][i]` is draw k at pitch i. */
export interface DrawnLine {
  design: Design
  pitches: number[]
  tried: Tried[][]
}

export interface Searched {
  /** how many balances were solved so far */
  balances: number
  /** every line looked at, on the craft as written */
  lines: Line[]
}

export interface Drawn {
  balances: number
  draws: number
  /** lines that were worth drawing; the one that is fitted first */
  lines: DrawnLine[]
  /** single designs on every draw, in the order they were given */
  singles: { design: Design; tried: Tried[] }[]
  /** the same lines with the engines at either end of what they may give, and that power, W */
  ends: { case: Case; power: number; tried: Tried[][] }[]
}

export const pitched = (design: Design, pitch: number): Design => ({ ...design, pitch })

/** the coarse pitches, over the bore: a fifth apart, where maps are sampled */
const coarse = Array.from({ length: 8 }, (_, i) => Math.exp(-1 + 0.2 * i)).filter(
  (s) => s >= pitchShares.low && s <= pitchShares.high,
)

/** Any number of a line over its pitches, by cubics in the logarithm of the pitch; NaN where it is not known anywhere. */
export function curveOf(
  pitches: readonly number[],
  tried: readonly Tried[],
  pick: (t: Tried) => number,
): (pitch: number) => number {
  const known = pitches.flatMap((p, i) => {
    const value = pick(tried[i]!)
    return Number.isFinite(value) ? [{ x: Math.log(p), value }] : []
  })
  if (known.length < 2) return () => known[0]?.value ?? Number.NaN
  const curve = pchip(
    known.map((k) => k.x),
    known.map((k) => k.value),
  )
  return (pitch) => cubicAt(curve, Math.log(pitch))
}

/** Best pitch of a line, to a third of a per cent, and its merit. */
export function topOf(
  pitches: readonly number[],
  merit: (pitch: number) => number,
): { pitch: number; merit: number } {
  const [a, b] = [Math.log(pitches[0]!), Math.log(pitches.at(-1)!)]
  const steps = Math.max(12, Math.ceil((b - a) / 0.003))
  let best = { pitch: pitches[0]!, merit: Number.NEGATIVE_INFINITY }
  for (let i = 0; i <= steps; i++) {
    const pitch = Math.exp(a + ((b - a) * i) / steps)
    const m = merit(pitch)
    if (m > best.merit) best = { pitch, merit: m }
  }
  return best
}

const tops = new WeakMap<Line, { pitch: number; merit: number }>()

/** Best pitch of a line on the craft as written, and its merit. */
export function bestOf(line: Line): { pitch: number; merit: number } {
  let top = tops.get(line)
  if (!top) {
    top = topOf(
      line.pitches,
      curveOf(line.pitches, line.tried, (t) => t.merit),
    )
    tops.set(line, top)
  }
  return top
}

/** blade numbers worth trying beside those fitted */
const bladesFor = (now: number): number[] =>
  [...new Set([2, 3, 4, ...(now >= 4 ? [5] : []), now])]
    .filter((z) => z >= 2 || z === now)
    .sort((a, b) => a - b)

const nozzleShares = [0.78, 0.86, 0.93, 1, 1.08, 1.17, 1.28]
const ratioShares = [0.75, 0.87, 1, 1.15, 1.33]
const boreShares = [0.86, 0.93, 1, 1.08, 1.16]

/** All coarse combinations of what may be chosen, pitch left out. */
function combinations(craft: Craft): Design[] {
  const now = designOfCraft(craft)
  const reach = reachOf(craft)
  const made: Design[] = []
  // where more is open fewer nozzles do: the finer look comes round the best
  const nozzles = reach.ratio || reach.bore ? nozzleShares.filter((_, i) => i % 2 === 1) : nozzleShares
  for (const blades of bladesFor(now.blades))
    for (const b of reach.bore ? boreShares : [1])
      for (const r of reach.ratio ? ratioShares : [1])
        for (const n of nozzles)
          made.push({ ...now, blades, bore: now.bore * b, ratio: now.ratio * r, nozzle: now.nozzle * n * b })
  return made
}

/** Requests of the craft as written, one for each kind of blade, so that no two threads sample the same pump. */
async function tryLines(
  designs: readonly { design: Design; pitches: number[] }[],
  tryMany: TryDesigns,
): Promise<Line[]> {
  const kinds = new Map<string, { design: Design; pitches: number[] }[]>()
  for (const d of designs) {
    const key = `${d.design.blades} ${d.design.bore}`
    const sorted = { design: d.design, pitches: [...d.pitches].sort((a, b) => a - b) }
    kinds.set(key, [...(kinds.get(key) ?? []), sorted])
  }
  const groups = [...kinds.values()]
  const results = await tryMany(
    groups.map((group) => ({
      case: 'as written',
      designs: group.flatMap((g) => g.pitches.map((p) => pitched(g.design, p))),
    })),
  )
  return groups.flatMap((group, k) => {
    let at = 0
    return group.map(({ design, pitches }) => {
      const tried = results[k]!.tried.slice(at, at + pitches.length)
      at += pitches.length
      return { design, pitches, tried }
    })
  })
}

const sameKind = (a: Design, b: Design) =>
  a.blades === b.blades && a.nozzle === b.nozzle && a.ratio === b.ratio && a.bore === b.bore

/** Two looks at the same line put together. */
function merged(lines: readonly Line[], more: readonly Line[]): Line[] {
  const out = [...lines]
  for (const line of more) {
    const i = out.findIndex((l) => sameKind(l.design, line.design))
    const old = out[i]
    if (!old) {
      out.push(line)
      continue
    }
    const points = [...old.pitches.map((p, k) => ({ p, t: old.tried[k]! }))]
    line.pitches.forEach((p, k) => {
      if (!points.some((x) => Math.abs(x.p / p - 1) < 1e-4)) points.push({ p, t: line.tried[k]! })
    })
    points.sort((a, b) => a.p - b.p)
    out[i] = { design: old.design, pitches: points.map((x) => x.p), tried: points.map((x) => x.t) }
  }
  return out
}

const solvedIn = (lines: readonly Line[]) => lines.reduce((sum, l) => sum + l.pitches.length, 0)

/** The first look: the blades and the nozzle that are fitted, over every pitch. */
export async function searchFitted(craft: Craft, tryMany: TryDesigns): Promise<Searched> {
  const design = designOfCraft(craft)
  let lines = await tryLines([{ design, pitches: coarse.map((s) => s * design.bore) }], tryMany)
  lines = merged(lines, await tryLines([{ design, pitches: round(bestOf(lines[0]!).pitch, fine) }], tryMany))
  return { balances: solvedIn(lines), lines }
}

const fine = [0.86, 0.93, 1, 1.07, 1.15]
const round = (pitch: number, shares: readonly number[]) => shares.map((s) => s * pitch)

/** Everything coarsely, then finer round the best kinds. */
export async function searchAll(craft: Craft, before: Searched, tryMany: TryDesigns): Promise<Searched> {
  const now = designOfCraft(craft)
  const known = before.lines[0]!
  const all = combinations(craft).filter((d) => !sameKind(d, known.design))
  let lines = merged(
    before.lines,
    await tryLines(
      all.map((design) => ({ design, pitches: coarse.map((s) => s * design.bore) })),
      tryMany,
    ),
  )
  const rank = () => [...lines].sort((a, b) => bestOf(b).merit - bestOf(a).merit)
  // the best three kinds apart from their nozzles, and every blade number with the nozzle that is fitted
  const best = rank()
  const kinds: Line[] = []
  for (const line of best) {
    if (kinds.length >= 3) break
    if (!kinds.some((k) => sameKind({ ...k.design, nozzle: 0 }, { ...line.design, nozzle: 0 })))
      kinds.push(line)
  }
  const next = kinds.flatMap((line) =>
    [0.93, 0.965, 1, 1.035, 1.07].map((share) => ({
      design: { ...line.design, nozzle: line.design.nozzle * share },
      pitches: round(
        bestOf(line).pitch,
        share === 1
          ? fine
          : [
              ...fine,
              ...coarse
                .map((s) => (s * line.design.bore) / bestOf(line).pitch)
                .filter((s) => s < 0.8 || s > 1.22),
            ],
      ),
    })),
  )
  const fitted = lines.filter((l) => sameKind({ ...l.design, blades: now.blades }, now))
  next.push(...fitted.map((line) => ({ design: line.design, pitches: round(bestOf(line).pitch, fine) })))
  lines = merged(lines, await tryLines(next, tryMany))
  return { balances: solvedIn(lines), lines }
}

/** pitches a line is drawn at, over its best on the craft as written: engines that give less want less */
const drawnShares = [0.7, 0.8, 0.88, 0.95, 1.02, 1.1, 1.2]

/**
 * The lines given and single designs on joint draws, and with the engines at either end. Each draw is one request: whoever works on
 * it samples its pumps once.
 */
export async function drawDesigns(
  lines: readonly Line[],
  singles: readonly Design[],
  draws: number,
  tryMany: TryDesigns,
): Promise<Drawn> {
  const over = lines.map((line) => ({ design: line.design, pitches: round(bestOf(line).pitch, drawnShares) }))
  // one kind of blade after the other, so that its maps are at hand
  const designs = [...singles, ...over.flatMap((l) => l.pitches.map((p) => pitched(l.design, p)))]
  const cases: Case[] = [...Array.from({ length: draws }, (_, k) => k), 'engines weak', 'engines strong']
  const results = await tryMany(cases.map((at) => ({ case: at, designs })))
  const cut = (r: TrialResult) => {
    let at = singles.length
    return over.map((l) => {
      const part = r.tried.slice(at, at + l.pitches.length)
      at += l.pitches.length
      return part
    })
  }
  const drawn = results.slice(0, draws)
  const parts = drawn.map(cut)
  return {
    balances: designs.length * cases.length,
    draws,
    lines: over.map((l, i) => ({ ...l, tried: parts.map((p) => p[i]!) })),
    singles: singles.map((design, i) => ({ design, tried: drawn.map((r) => r.tried[i]!) })),
    ends: results.slice(draws).map((r, i) => ({ case: cases[draws + i]!, power: r.power, tried: cut(r) })),
  }
}

/** a merit of nothing still has to be averaged in logarithms */
const leastMerit = 1e-4

/** Geometric mean of the merit over the draws, over the pitches of a drawn line. */
export function meanMeritOf(line: DrawnLine): (pitch: number) => number {
  const curves = line.tried.map((tried) => curveOf(line.pitches, tried, (t) => t.merit))
  return (pitch) => {
    let sum = 0
    for (const merit of curves) sum += Math.log(Math.max(leastMerit, merit(pitch)))
    return Math.exp(sum / curves.length)
  }
}
