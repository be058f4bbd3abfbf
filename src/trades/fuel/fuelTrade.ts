/** The trade fuel: from the tank to the jets, in every lean and at every flow. */
import { defineTrade } from '../trade.ts'
import { type FuelAnswer, fuelAnswer } from './fuelAnswer.ts'
import { fuelFindings, fuelHeadline } from './fuelFindings.ts'
import { type FuelInputs, fuelFromCraft } from './fuelFromCraft.ts'
import { type FuelLimits, fuelLimits } from './fuelLimits.ts'
import type { FuelSetting } from './fuelSetting.ts'

export const fuelTrade = defineTrade<FuelInputs, FuelAnswer | undefined, FuelSetting>({
  id: 'fuel',
  question: 'fuel',
  title: 'Tank to jets',
  reads: ['fuel', 'tanks', 'engines', 'openings', 'rider', 'place', 'weights'],
  inputs: (craft, setting) => fuelFromCraft(craft, setting),
  answer: (inputs) => fuelAnswer(inputs),
  limits: fuelLimits,
  judge: ({ inputs, answer }, limits) => fuelFindings(inputs, answer, limits as FuelLimits),
  headline: ({ inputs, answer }, limits) => fuelHeadline(inputs, answer, limits as FuelLimits),
})
