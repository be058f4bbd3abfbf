/** What the design search has to say, as findings. */
import { asChange, inCount, inNewtons, inSpeed, withEnds } from '../../base/answers/amounts.ts'
import type { Gain } from '../../base/answers/decision.ts'
import type { Because, Finding } from '../../base/answers/finding.ts'
import { type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import type { DesignAnswer, DesignOption } from './designTypes.ts'
import { bandSays } from './designWords.ts'
import { wantsSays } from './merit.ts'

/** "+38 N of pull (+10 to +180 N), −0.8 km/h (−1.9 to +10.3 km/h)" */
export function buys(gain: Gain): Sentence {
  const pull = asChange(withEnds(inNewtons(gain.pull.value), gain.pull))
  if (!gain.topSpeed) return say`${pull} of pull`
  return say`${pull} of pull, ${asChange(withEnds(inSpeed(gain.topSpeed.value), gain.topSpeed))}`
}

/** worth of the best option from which what is fitted counts as wrong, a share */
const wrongFrom = 0.05

const sources = [
  'Search over pitch, blade number and nozzle on the whole balance, joint draws of everything doubtful (ISO/IEC Guide 98-3/Suppl. 1:2008)',
  'Strip model of the rotor with lattice turning and cascade losses (Weinig 1935; Lieblein 1959; Denton 1993)',
]

/** The best change with what it buys, what else was held against it, and how well the pitch of the fitted blades sits. */
export function designFindings(craft: Craft, answer: DesignAnswer): Finding[] {
  const offered = answer.options.filter((o) => o.offered)
  const engines = craft.engines.filter((e) => e.running).length
  const because: Because[] = [
    ...answer.options.filter((o) => o !== offered[0]).flatMap((o) => comparedSays(o)),
    ...(answer.fitted
      ? [
          {
            says: say`with the blades that are fitted ${bandSays(answer.fitted, engines)}`,
            link: 'jet.rotor.pitch',
          },
        ]
      : []),
    {
      says: say`${inCount(answer.balances)} balances solved, ${inCount(answer.draws)} joint draws`,
      link: 'jet.rotor',
    },
  ]
  const best = offered[0]
  if (!best)
    return [
      {
        id: 'push.design',
        question: 'push',
        says: `Nothing that can be printed does better for ${wantsSays[answer.wants]} than what is fitted.`,
        standing: 'good',
        because,
        sources,
      },
    ]
  const gain = best.gain ? say`: ${buys(best.gain)}` : ''
  return [
    {
      id: 'push.design',
      question: 'push',
      says: whole(say`Best for ${wantsSays[answer.wants]} is ${best.says}${gain}`),
      standing: best.worth > wrongFrom ? 'watch' : 'good',
      act: say`fit ${best.says}`,
      changes: best.changes,
      ...(best.gain ? { gain: best.gain } : {}),
      because: best.band
        ? [
            { says: say`with those blades ${bandSays(best.band, engines)}`, link: 'jet.rotor.pitch' },
            ...because,
          ]
        : because,
      sources,
    },
  ]
}

function comparedSays(o: DesignOption): Because[] {
  if (!o.gain) return []
  const link = Object.keys(o.values)[0] ?? 'jet.rotor.pitch'
  return [{ says: say`${o.says}: ${buys(o.gain)}`, link }]
}
