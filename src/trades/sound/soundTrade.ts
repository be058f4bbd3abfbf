/** The trade sound: what was heard of a run, beside what the craft should have done. It answers a recording, not a craft. */
import { inPercent } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { defineTrade } from '../trade.ts'
import { enginesHeard, type HeardEngine } from './heardAnswer.ts'
import { rpmPerHertz } from './relations.ts'
import { comparedSpeeds } from './residuals.ts'
import { besideTable, enginesTable, speedTable } from './runNumbers.ts'
import { besidePicture, runPicture } from './soundFigures.ts'
import { type RunKnown, runFindings, runHeadline } from './soundFindings.ts'
import { expectsOf } from './soundFromCraft.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'
import { soundReckoners } from './soundReckoners.ts'

export interface RunInputs extends RunKnown {
  /** rev/min of one firing a second */
  rpmPerHertz: number
}

/** What is handed to the trade: a hearing, and what others worked out of the run beside it. */
export type RunSetting = RunKnown

/** What was heard, by engine. */
export type RunHeard = readonly HeardEngine[]

/** A run's inputs; without a craft, those of two-stroke singles of which nothing is known. */
export function runInputs(run: RunSetting, craft?: Craft): RunInputs {
  const first = craft?.engines.find((e) => e.running && e.kind !== 'electric')
  const cylinders = first && 'cylinders' in first ? Math.round(first.cylinders.value) : 1
  const expects = run.expects ?? (craft && expectsOf(craft))
  return { ...run, expects, rpmPerHertz: rpmPerHertz(cylinders) }
}

/** What to look at in the picture of heard and predicted speed. */
export const besideCaption = say`Predicted for full throttle; what ran below ${inPercent(soundLimits.fullThrottle.value)} of it is taken for part throttle and not compared.`

export const soundTrade = defineTrade<RunInputs, RunHeard, RunSetting>({
  id: 'runs',
  question: 'runs',
  title: 'What was heard',
  reads: ['engines', 'drive'],
  onlyHanded: true,
  inputs: (craft, run) => runInputs(run, craft),
  answer: ({ hearing }) => enginesHeard(hearing),
  limits: soundLimits,
  judge: ({ inputs, answer }, limits) => runFindings(inputs, answer, limits as SoundLimits),
  headline: ({ inputs, answer }, limits) => runHeadline(inputs, answer, limits as SoundLimits),
  figures: [
    {
      id: 'run',
      title: 'What was heard',
      caption: () =>
        'Dark is loud. A line of an engine that fires once a turn stands at its speed; fainter lines at twice and three times that are the same engine’s.',
      draw: ({ inputs }, _, { width }) =>
        runPicture({
          width,
          spectrogram: inputs.hearing.spectrogram,
          rpmPerHertz: inputs.rpmPerHertz,
          hearing: inputs.hearing,
        }),
    },
    {
      id: 'heard and predicted',
      title: 'Heard and predicted speed',
      caption: () => besideCaption,
      draw: ({ inputs }, _, { width }) => besidePicture(inputs.hearing, inputs.prediction, width),
    },
  ],
  numbers: ({ inputs, answer }) => [
    enginesTable(inputs.hearing, answer),
    speedTable(inputs.hearing, answer),
    ...(inputs.prediction ? [besideTable(comparedSpeeds(inputs))] : []),
  ],
  reckoners: soundReckoners,
  cautions: [
    'Keep hands, hair and clothes away from the jet, the shaft and the pipe; they are hot or turning while you record.',
    'Run engines outdoors only: exhaust holds carbon monoxide, which has no smell and kills in closed and half-closed places.',
    'In a tied-up pull the rope can part or the post give way: stay out of its line, wear a life jacket, and have somebody beside the stop switch.',
    'A phone held in the hand belongs to somebody who is not steering.',
  ],
  method: [
    'The recording is brought to 4000 samples a second and looked at in windows of 0.36 s. In each, combs of evenly spaced lines are fitted, allowing for changing speed; the likeliest path of one or two combs through the whole recording is what you see.',
    'One firing a turn is taken for a two-stroke single; the number of cylinders comes from the craft file. Locked points are kept exactly, and what lies between them is found again.',
  ],
})
