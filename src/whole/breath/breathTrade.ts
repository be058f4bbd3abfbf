/** The trade breath: what engines, pipes, silencers and air intakes have to say. */
import type { Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import { engineGives } from '../../trades/engine/engineGives.ts'
import { engineReckoners } from '../../trades/engine/engineReckoners.ts'
import { simulatedLine } from '../../trades/engine/torqueLine.ts'
import { exhaustReckoners } from '../../trades/exhaust/exhaustReckoners.ts'
import { type AnyTrade, defineTrade } from '../../trades/trade.ts'
import { engineGiven } from './breathAnswer.ts'
import { type BreathLimits, breathFindings, breathLimits } from './breathFindings.ts'
import { breathView } from './breathView.ts'
import type { EngineAnswers } from './engineAnswers.ts'

interface BreathInputs {
  craft: Craft
  engines: EngineAnswers | undefined
}

export const breathTrade: AnyTrade = defineTrade<BreathInputs, undefined, EngineAnswers | undefined>({
  id: 'breath',
  question: 'breath',
  title: 'Engines, pipes and air',
  reads: [
    'engines',
    'place',
    'openings',
    'hull',
    'jet',
    'rider',
    'weights',
    'tanks',
    'foam',
    'compartments',
    'files',
  ],
  inputs: (craft, engines) => ({ craft, engines }),
  answer: () => undefined,
  limits: breathLimits,
  judge: ({ inputs }, limits) =>
    breathFindings(inputs.craft, undefined, inputs.engines, limits as BreathLimits),
  headline: ({ inputs }) => breathHeadline(inputs),
  reckoners: [...engineReckoners, ...exhaustReckoners],
})

/** What each engine gives, by whatever the file knows of it. */
function breathHeadline({ craft, engines }: BreathInputs): Finding {
  const each = craft.engines.map((_, i): { says: Sentence; known: boolean } => {
    const view = breathView(craft, i)
    const curve = engines?.simulated.get(i)?.curve
    const gives = curve && engineGives(simulatedLine(view.name, curve, view.reading?.cylinders ?? 1))
    if (gives) return { says: gives, known: true }
    const given = view.given && engineGiven(view.given, view.kind)
    if (given) return { says: given, known: view.kind === 'electric' }
    return {
      says: say`how ${view.name} breathes is not known: the file has no ports and pipe that could be worked out`,
      known: false,
    }
  })
  return {
    id: 'breath.headline',
    question: 'breath',
    says: whole(
      joined(
        each.map((one) => one.says),
        '; ',
      ),
    ),
    standing: each.every((one) => one.known) ? 'good' : 'unknown',
    because: craft.engines.map((e, i) => ({ says: e.name ?? `engine ${i + 1}`, link: `engines.${i}` })),
    sources: ['Simulation of cylinder, crankcase and pipe, or the craft file'],
  }
}
