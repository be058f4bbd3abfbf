/** The trade breath: what engines, pipes, silencers and air intakes have to say. */
import { inKw, inRpm, inTorque } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import { engineReckoners } from '../../trades/engine/engineReckoners.ts'
import { peaksOf } from '../../trades/engine/torqueFromSimulation.ts'
import { exhaustReckoners } from '../../trades/exhaust/exhaustReckoners.ts'
import { type AnyTrade, defineTrade } from '../../trades/trade.ts'
import { type BreathLimits, breathFindings, breathLimits } from './breathFindings.ts'
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
  const each = craft.engines.map((e, i): { says: Sentence; known: boolean } => {
    const name = e.name ?? `engine ${i + 1}`
    if (e.kind === 'electric') return { says: say`${name} is electric and does not breathe`, known: true }
    const simulated = engines?.simulated.get(i)
    const peaks = simulated && peaksOf(simulated.curve)
    if (!peaks?.power.point || !peaks.torque.point)
      return {
        says: say`how ${name} breathes is not known: the file has no ports and pipe that could be worked out`,
        known: false,
      }
    const cylinders = engines?.readings.get(i)?.cylinders ?? 1
    const power = inKw(peaks.power.point.power * cylinders)
    const torque = inTorque(peaks.torque.point.torque * cylinders)
    return {
      says: say`${name} gives ${power} at ${inRpm(peaks.power.rpm / 60)} and ${torque} at ${inRpm(peaks.torque.rpm / 60)} by simulation`,
      known: true,
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
