/** The trade jet: what impeller, intake and nozzle have to say where the balance found them running. */
import type { Craft } from '../../craft/index.ts'
import { defineTrade } from '../trade.ts'
import { jetFindings } from './jetFindings.ts'
import { type JetLimits, jetLimits } from './jetLimits.ts'
import { jetReckoners } from './jetReckoners.ts'
import type { JetSituation } from './say/jetView.ts'

interface JetInputs {
  craft: Craft
  at: JetSituation | undefined
}

export const jetTrade = defineTrade<JetInputs, undefined, JetSituation | undefined>({
  id: 'jet',
  question: 'push',
  title: 'Jet',
  reads: ['jet', 'place', 'engines', 'drive', 'hull', 'weights', 'rider', 'tanks', 'files'],
  inputs: (craft, at) => ({ craft, at }),
  answer: () => undefined,
  limits: jetLimits,
  judge: ({ inputs }, limits) => jetFindings(inputs.craft, inputs.at, limits as JetLimits),
  reckoners: jetReckoners,
})
