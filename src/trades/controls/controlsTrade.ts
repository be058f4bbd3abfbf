/** The trade controls: what it takes to start the engines, to hold their throttle, and to stop them. */
import { inCount, inMm, inNewtons } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type Card, defineTrade } from '../trade.ts'
import { cableFindings } from './cableFindings.ts'
import { type ControlsInputs, controlsFromCraft } from './controlsFromCraft.ts'
import { type ControlsLimits, controlsLimits } from './controlsLimits.ts'
import { controlsReckoners } from './controlsReckoners.ts'
import { cordFindings, finding, type Pull, pullOf } from './pullFindings.ts'

export const controlsTrade = defineTrade<ControlsInputs, Pull | undefined>({
  id: 'controls',
  question: 'strength',
  title: 'Starting and control',
  reads: ['cord', 'cable', 'engines', 'drive'],
  inputs: controlsFromCraft,
  answer: (inputs) => (inputs.craft.cord ? pullOf(inputs, inputs.craft.cord) : undefined),
  limits: controlsLimits,
  judge: ({ inputs }, limits) => judged(inputs, limits as ControlsLimits),
  cards: ({ inputs, answer }) => [checklist(inputs, answer)],
  reckoners: controlsReckoners,
  cautions: [
    'Pull a cord with the kill cord out when you only turn the engine over; a hand round the cord breaks when it kicks back.',
  ],
})

function judged(inputs: ControlsInputs, limits: ControlsLimits): Finding[] {
  return [...missing(inputs), ...cordFindings(inputs, limits), ...cableFindings(inputs, limits)]
}

/** One finding for all that the file does not say. */
function missing({ craft, engines }: ControlsInputs): Finding[] {
  const cord = !craft.cord && engines.length > 0
  const cable = !craft.cable
  if (!cord && !cable) return []
  const what = cord && cable ? 'pull-cord and throttle cable' : cord ? 'pull-cord' : 'throttle cable'
  const least = engines.reduce((sum, e) => sum + e.turning.mean * e.cylinders, 0)
  return [
    finding('unknown', {
      says: say`How it starts and is held is not known in all: the file says nothing of its ${what}.`,
      standing: 'unknown',
      because: [
        ...(cord
          ? [
              {
                says: say`on a drum of ${inMm(0.06)} a quick pull over compression would take about ${inNewtons(least / 0.03)}`,
                link: 'cord',
              },
            ]
          : []),
        ...(cable
          ? [{ says: 'bends, spring, and which engines the kill cord stops are enough', link: 'cable' }]
          : []),
      ],
      measureNext: cord
        ? { what: 'measure the drum of the starter across', with: 'caliper', minutes: 5, path: 'cord.drum' }
        : {
            what: 'add up the bends of the cable and hook a luggage scale to its end',
            with: 'luggage scale',
            minutes: 5,
            path: 'cable',
          },
      sources: ['The craft file'],
    }),
  ]
}

/** Before each start, made from what the file says. */
function checklist({ craft, engines }: ControlsInputs, pull: Pull | undefined): Card {
  const { cable, cord } = craft
  const count = craft.engines.length
  const steps: Sentence[] = [
    say`Kill cord: pull it off while it idles; ${count > 1 ? say`all ${inCount(count)} engines die` : 'the engine dies'}.`,
    'Throttle: open it wholly and let go, handle straight and turned to both sides; it snaps shut each time.',
    ...(cable
      ? [
          say`Free travel of ${inMm(cable.freeTravel.value, 0.1)} at the carburettor, both ends of the cable in their seats.`,
        ]
      : []),
    ...(craft.engines.length > 1 ? ['Both slides start to open at the same moment, and shut together.'] : []),
    ...(engines.length > 0
      ? [
          'Lid off, sniff, air the bay; no open switch is worked while it smells of petrol.',
          ...(cord
            ? [
                'Cord: no broken strand at the handle, the drum and each bend; the knot sits; a turn is left on the drum at full pull.',
              ]
            : []),
          pull
            ? say`Pull to the first hard place, let the cord back, then through in one go: about ${inNewtons(pull.quick.value)}.`
            : 'Pull to the first hard place, let the cord back, then through in one go.',
        ]
      : []),
    'Lanyard on the wrist or the vest before the first pull, clear of cord and cable.',
  ]
  return {
    id: 'checklist',
    title: 'Before each start',
    says: say`${inCount(steps.length)} things to try`,
    steps,
  }
}
