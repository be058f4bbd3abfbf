/** The trade breath: what engines, pipes, silencers and air intakes have to say. */
import type { Craft } from '../../craft/index.ts'
import { engineReckoners } from '../../trades/engine/engineReckoners.ts'
import { exhaustReckoners } from '../../trades/exhaust/exhaustReckoners.ts'
import { type AnyTrade, defineTrade } from '../../trades/trade.ts'
import { engineAnswer, headlineOf } from './breathAnswer.ts'
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
  headline: ({ inputs: { craft, engines } }) =>
    headlineOf(
      craft.engines.map((_, i) =>
        engineAnswer(breathView(craft, i), { curve: engines?.simulated.get(i)?.curve }),
      ),
    ),
  reckoners: [...engineReckoners, ...exhaustReckoners],
})
