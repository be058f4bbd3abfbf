/** How high every opening stands over the water: the one place where such a height is judged. */
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import { type FloatLimits, watchHeight } from './floatLimits.ts'
import { advice, capital, cm, overWater, own as ownMesh } from './floatSay.ts'
import type { FloatInput } from './input.ts'
import type { OpeningKind, OpeningRow } from './openingHeights.ts'

/** How an opening's height (m) at rest stands by itself. */
export function judgeAtRest(kind: OpeningKind, height: number, limits: FloatLimits): Standing {
  if (kind === 'shaft seal') return 'good'
  const floods = kind === 'exhaust outlet' ? limits.outletFloods : limits.floods
  if (height < floods.value) return 'stop'
  return height < watchHeight(kind, limits) ? 'watch' : 'good'
}

export function openingFindings(input: FloatInput, a: FloatAnswer, limits: FloatLimits): Finding[] {
  if (a.openings.length === 0) return [noneGiven]
  return [
    ...a.openings.flatMap((row, i) =>
      row.opening.kind === 'shaft seal' ? [] : openingFinding(a, row, i, limits),
    ),
    ...statedTwice(input, a, limits),
  ]
}

/** An outlet's height that the file states twice, and differently: one of the two is wrong. */
function statedTwice(input: FloatInput, a: FloatAnswer, limits: FloatLimits): Finding[] {
  return (input.outlets ?? []).flatMap(({ engine, path, opening, lip, give }, i): Finding[] => {
    const row = a.openings[opening]
    const as = a.openingStates.indexOf('as ridden')
    const own = row?.heights[as]
    if (row === undefined || own === undefined) return []
    // how deep it floats is in doubt by what is not known of its weight
    const doubt = Math.hypot(give, a.weights.give / (input.water * 0.6 * input.hull.length * input.hull.beam))
    if (Math.abs(own - lip) <= limits.outletTwice.value + doubt) return []
    const place = row.opening.path ?? `openings.${opening}.at`
    return [
      {
        id: `float.outlet-twice.${i}`,
        question: 'float',
        says: say`The file says twice, and differently, how high the exhaust outlet of ${engine} stands: its place among the openings puts it ${overWater(own)}, its height under the exhaust ${overWater(lip)}. The place counts here; which is right?`,
        value: own - lip,
        unit: 'm',
        standing: 'watch',
        because: [
          { says: say`by its place: ${overWater(own)}`, link: place },
          { says: say`by its height: ${overWater(lip)}`, link: path },
        ],
        measureNext: {
          what: 'the outlet’s lowest lip over still water, with the rider aboard',
          with: 'tape',
          minutes: 5,
          path: place,
        },
        sources: ['The craft file', ownMesh],
      },
    ]
  })
}

const noneGiven: Finding = {
  id: 'float.openings',
  question: 'float',
  says: 'How high the air intake, the exhaust outlet and the vents stand above the water is not known: none is in the file.',
  standing: 'unknown',
  because: [{ says: 'no openings in the file', link: 'openings' }],
  measureNext: {
    what: 'measure the lowest point of each opening',
    with: 'tape',
    minutes: 10,
    path: 'openings',
  },
  sources: [advice],
}

const resting = ['at rest, no rider', 'as ridden']

function openingFinding(a: FloatAnswer, row: OpeningRow, i: number, limits: FloatLimits): Finding[] {
  const { opening, heights } = row
  const states = a.openingStates.map((name, k) => ({ name, height: heights[k]! }))
  const rest = Math.min(...states.filter((s) => resting.includes(s.name)).map((s) => s.height))
  if (!Number.isFinite(rest)) return []
  const lowest = states
    .filter((s) => s.name !== 'swamped')
    .reduce((low, s) => (s.height < low.height ? s : low))
  const swamped = states.find((s) => s.name === 'swamped')?.height
  const vital = opening.kind === 'air intake' || opening.kind === 'tank vent'
  const still = judgeAtRest(opening.kind, rest, limits)
  const wets =
    vital &&
    (lowest.height < limits.dips.value || (swamped !== undefined && swamped < limits.swampedVital.value))
  const dips: Sentence =
    lowest.height < rest - 0.005
      ? say`, ${lowest.height < 0 ? say`${cm(-lowest.height)} under` : say`${cm(lowest.height)}`} with ${spoken[lowest.name] ?? lowest.name}`
      : ''
  const watch = watchHeight(opening.kind, limits)
  const because: Because[] = [
    { says: say`advised at rest: ${cm(watch)}`, link: opening.path ?? `openings.${i}.at` },
  ]
  const sure = a.rest?.openings[i]
  const range = sure ? { low: Math.min(rest, sure.low), high: Math.max(rest, sure.high) } : undefined
  if (range)
    because.push({
      says: say`${cm(range.low)} to ${cm(range.high)} at rest with what is doubtful of weights, places and hull, and what lists leave out`,
      link: 'weights',
    })
  if (opening.placeAssumed)
    because.push({ says: 'only its height is in the file; it is taken to be in the middle of the transom' })
  if (swamped !== undefined) because.push({ says: say`${overWater(swamped)} when swamped` })
  if (opening.kind === 'exhaust outlet' && still !== 'good')
    because.push({
      says: say`a riser ${cm(0.15)} above the water inside keeps water out of the engine`,
    })
  const finding: Finding = {
    id: `float.opening.${i}`,
    question: 'float',
    says: say`${capital(opening.name)} is ${overWater(rest)} at rest${dips}.`,
    value: rest,
    ...range,
    unit: 'm',
    standing: still === 'good' && wets ? 'watch' : still,
    because,
    ...(still === 'good' ? {} : { act: say`raise ${opening.name} by ${cm(watch - rest)} or more` }),
    sources: [ownMesh, advice],
  }
  return [finding]
}

const spoken: Readonly<Record<string, string>> = {
  'at rest, no rider': 'nobody aboard',
  'as ridden': 'the rider aboard',
  'rider right aft': 'the rider right aft',
  '20° to port': '20° of heel to port',
  '20° to starboard': '20° of heel to starboard',
  'bow down 5°': 'the bow 5° down',
}
