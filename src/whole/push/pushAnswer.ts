import { printed } from '../../base/answers/sentence.ts'
/** The answer to "How will it go?" in one sentence, with its range and what its doubt comes from. */
import { type Craft, fieldAt } from '../../craft/index.ts'
import type { Balance, Driver } from './balanceTypes.ts'
import { cannotTurn } from './oneDeadFindings.ts'
import { type Look, says, saysRange, saysRpm, saysStep, systemOf } from './shown.ts'

export interface PushAnswer {
  says: string
  /** "45 to 54 km/h, 660 to 810 N"; absent until ranges are known */
  range?: string
  /** where the doubt comes from; absent until ranges are known */
  confidence?: string
}

/** The sentence, its range and its confidence, in the look's units. */
export function pushAnswer(craft: Craft, b: Balance, look: Look): PushAnswer {
  const answer: PushAnswer = { says: `${going(craft, b, look)} ${impeller(b, look)}` }
  if (!b.ranged) return answer
  const ranges = [saysRange(b.topSpeed, 'speed', look), saysRange(b.pull, 'force', look)].filter(
    (r) => r !== '',
  )
  if (ranges.length > 0) answer.range = ranges.join(', ')
  const { share, names } = doubtOf(craft, b)
  if (names.length > 0)
    answer.confidence = `${Math.round(100 * share)} % of the doubt comes from ${names.join(' and ')}.`
  return answer
}

/** what `limitedBy` says of a craft without a top speed because its jet cannot move it */
const immobile: readonly Balance['limitedBy']['code'][] = ['air', 'cavitation', 'impeller']

function going(craft: Craft, b: Balance, look: Look): string {
  if (!Number.isFinite(b.tiedUp.rotation)) return `It will not go: ${cannotTurn(craft)}.`
  const pull = `pull ${says(b.pull.value, 'force', look)} tied up at ${saysRpm(b.tiedUpRotation.value)}`
  // no top speed has two opposite reasons: more thrust than the hull model covers, or none to speak of
  if (!b.top)
    return immobile.includes(b.limitedBy.code)
      ? `It will hardly move. ${printed(b.limitedBy.says, systemOf(look))}`
      : `It should ${pull}; its top speed lies beyond what the model covers.`
  const speed = says(b.topSpeed.value, 'speed', look)
  return b.run.stuck
    ? `It should ${pull}, but stay at ${speed}, below the hump.`
    : `It should reach ${speed} and ${pull}.`
}

function impeller(b: Balance, look: Look): string {
  const { code, bestPitch, pitchNow } = b.verdict
  const pitches = Number.isFinite(bestPitch.value)
    ? `: ${saysRange(bestPitch, 'length', look)} of pitch would do best, it has ${says(pitchNow, 'length', look)}${pitchBuys(b, look)}`
    : ''
  switch (code) {
    case 'too steep':
      return `The impeller looks too steep${pitches}.`
    case 'too shallow':
      return `The impeller looks too shallow${pitches}.`
    case 'right':
      return 'The impeller suits the engines.'
    case 'unknown':
      return ''
  }
}

/** What the better pitch would change, once that is worked out: " (+39 N of pull, −0.3 km/h)". */
function pitchBuys(b: Balance, look: Look): string {
  const change = b.changes.find((c) => c.id === 'pitch-best')
  if (!change || !Number.isFinite(change.pull.value)) return ''
  const speed = Number.isFinite(change.topSpeed.value)
    ? `, ${saysStep(change.topSpeed.value, 'speed', look)}`
    : ''
  return ` (at ${says(b.verdict.bestPitch.value, 'length', look)}: ${saysStep(change.pull.value, 'force', look)} of pull${speed})`
}

/** Share of the variance of the speed (of the pull where there is no speed) that its two largest inputs carry, and their names. */
export function doubtOf(craft: Craft, b: Balance): { share: number; names: string[] } {
  const by = (d: Driver) => (Number.isFinite(b.topSpeed.value) ? d.share.topSpeed : d.share.pull)
  const most = [...b.drivers]
    .filter((d) => by(d) > 0)
    .sort((x, y) => by(y) - by(x))
    .slice(0, 2)
  return {
    share: most.reduce((sum, d) => sum + by(d), 0),
    // two inputs a builder has one name for are named once
    names: [...new Set(most.map((d) => driverName(craft, d)))],
  }
}

/** A driver in a builder's words: its own when it has some, else its field's label with its part. */
export const driverName = (craft: Craft, d: Driver): string =>
  d.says !== d.path ? d.says : partName(craft, d.path)

/** A field of the craft file with the part it belongs to: "the impeller’s pitch". */
export function partName(craft: Craft, path: string): string {
  const field = fieldAt(path)
  const parts = path.split('.')
  const index = Number(parts[1])
  const named =
    parts[0] === 'weights'
      ? (craft.weights[index]?.name ?? 'weight')
      : parts[0] === 'engines' && craft.engines.length > 1
        ? (craft.engines[index]?.name ?? `engine ${index + 1}`)
        : undefined
  const owner =
    Number.isInteger(index) && named !== undefined
      ? named
      : parts.length > 2
        ? (parts.at(-2) ?? '')
        : (parts[0] ?? '')
  const label = (field?.label ?? parts.at(-1) ?? path).toLowerCase()
  return `the ${/^\d+$/.test(owner) ? (parts[0] ?? '').replace(/s$/, '') : owner === 'rotor' ? 'impeller' : owner}’s ${label}`
}
