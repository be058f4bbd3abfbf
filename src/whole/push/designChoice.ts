/** An answer of the design search laid out for a page: the best, how much may be lost, and each option with what it buys. */
import { inNewtons, inSpeed, ranged } from '../../base/answers/amounts.ts'
import type { FileChange } from '../../base/answers/decision.ts'
import { printed, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import { buys } from './designFindings.ts'
import type { DesignAnswer, DesignOption } from './designTypes.ts'
import { bandSays } from './designWords.ts'
import { quantityAt } from './draws.ts'
import { wantsSays } from './merit.ts'

export interface ChoiceLine {
  id: string
  says: Sentence
  /** change of pull and of speed; pull and speed themselves while what is fitted is not decided */
  buys: Sentence
  changes: readonly FileChange[]
  /** worth doing; the others stand there to be compared */
  offered: boolean
}

export interface Choice {
  /** a few words for the line of a fold */
  brief: Sentence
  says: Sentence
  /** how much is lost within a span of pitches, whatever the engines give: of the best, and of the blades that are fitted */
  regret: readonly Sentence[]
  lines: readonly ChoiceLine[]
}

/** The answer in words. Speeds in m/s and pulls in N, as amounts. */
export function choiceOf(craft: Craft, answer: DesignAnswer): Choice {
  const best = answer.options.find((o) => o.offered)
  const engines = craft.engines.filter((e) => e.running).length
  const { fitted } = answer
  const lines = answer.options.map(lineOf)
  const ahead = lines.filter((l) => l.offered)
  const regret = [
    ...(best?.band ? [whole(say`With those blades ${bandSays(best.band, engines)}`)] : []),
    ...(fitted && fitted !== best?.band
      ? [whole(say`With the blades that are fitted ${bandSays(fitted, engines)}`)]
      : []),
  ]
  return {
    brief: best ? say`${best.says}` : 'nothing that can be printed does better',
    says: best
      ? whole(say`Best for ${wantsSays[answer.wants]} is ${best.says}`)
      : `Nothing that can be printed does better for ${wantsSays[answer.wants]} than what is fitted.`,
    // the same pitches of the same blades are said once
    regret: regret.filter((r, i) => i === 0 || bare(r) !== bare(regret[0]!)),
    lines: [...ahead, ...lines.filter((l) => !l.offered)],
  }
}

const bare = (s: Sentence) => printed(s).replace(/^With \D*/, '')

const lineOf = (o: DesignOption): ChoiceLine => ({
  id: o.id,
  says: o.says,
  buys: o.gain ? buys(o.gain) : say`${ranged(inNewtons, o.pull)} of pull, ${ranged(inSpeed, o.topSpeed)}`,
  changes: o.changes,
  offered: o.offered,
})

/** values that the search chooses: what is tried of them is no other craft to search from */
const chosen = /^(jet\.rotor\.(pitch|trailing pitch|blades|bore|hub|hub out)|jet\.nozzle\.bore|drive\.ratio)$/

/** The tried values that a search starts from: without those it is there to choose. */
export const startOf = <T>(tried: Readonly<Record<string, T>>): Record<string, T> =>
  Object.fromEntries(Object.entries(tried).filter(([path]) => !chosen.test(path)))

/** The craft with its open choices put at `filled` (SI by path); a value that is decided stays. */
export function filledIn(craft: Craft, filled: Readonly<Record<string, number>>): Craft {
  const open = Object.entries(filled).filter(([path]) => quantityAt(craft, path)?.undecided)
  return open.length === 0 ? craft : whatIf(craft, Object.fromEntries(open))
}

/** True while the file leaves open what the search chooses. */
export const isOpen = (craft: Craft): boolean =>
  [craft.jet.rotor.pitch, craft.jet.rotor.blades, craft.jet.nozzle.bore, craft.drive.ratio].some(
    (q) => q.undecided,
  )
