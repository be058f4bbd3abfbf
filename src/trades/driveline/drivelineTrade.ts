/** The trade drive line: bolted joints, hubs, shaft, bearings and mounts as one chain from the first engine to the impeller. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { defineTrade } from '../trade.ts'
import { type DriveAnswer, type DriveInputs, driveAnswer } from './driveAnswer.ts'
import { driveFigure } from './driveFigure.ts'
import { driveFindings, driveHeadline } from './driveFindings.ts'
import { driveFromCraft } from './driveFromCraft.ts'
import { type DriveLimits, driveLimits } from './driveLimits.ts'
import { driveLevers, driveNumbers } from './driveNumbers.ts'
import { driveReckoners } from './driveReckoners.ts'
import { driveCautions, driveMethod } from './driveSay.ts'
import type { DriveSetting } from './driveSetting.ts'
import type { MountInputs } from './mountAnswer.ts'

function mountsOf({ mounts: m }: Craft): MountInputs | undefined {
  if (!m) return undefined
  const { across, height, hardness, loaded, mass, track, under } = m
  return { number: m.number.value, across, height, hardness, loaded, mass, track, under }
}

export const drivelineTrade = defineTrade<DriveInputs, DriveAnswer | undefined, DriveSetting | undefined>({
  id: 'driveline',
  question: 'strength',
  title: 'Shaft and joints',
  reads: ['shaft', 'mounts', 'engines', 'drive', 'jet'],
  inputs: (craft, setting) => ({
    chain: driveFromCraft(craft, setting?.bay),
    ratio: craft.drive.ratio.value,
    oneWayClutch: craft.drive.clutch === 'one-way',
    mounts: mountsOf(craft),
    setting: setting && perJet(craft, setting),
  }),
  answer: driveAnswer,
  limits: driveLimits,
  judge: ({ inputs, answer }, limits) => driveFindings(inputs, answer, limits as DriveLimits),
  levers: driveLevers,
  figures: [
    {
      id: 'chain',
      title: 'Shaft and joints',
      caption: ({ inputs, answer }) => driveHeadline(inputs, answer, driveLimits).says,
      draw: driveFigure,
    },
  ],
  numbers: driveNumbers,
  reckoners: driveReckoners,
  cautions: driveCautions,
  method: driveMethod,
  headline: ({ inputs, answer }, limits) => driveHeadline(inputs, answer, limits as DriveLimits),
})

/** With a jet for each engine the chain is one of several alike, and so is its thrust. */
function perJet(craft: Craft, setting: DriveSetting): DriveSetting {
  if (craft.drive.arrangement === 'one shaft') return setting
  const jets = craft.engines.length
  return { ...setting, states: setting.states.map((s) => ({ ...s, thrust: s.thrust / jets })) }
}
