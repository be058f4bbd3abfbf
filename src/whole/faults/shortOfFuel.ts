/** How much an engine is left with whose jet is part shut: what the fuel trade reckons of a chip in it, the throttle where it goes best. */
import { chipInJet, richest } from '../../trades/fuel/chipInJet.ts'
import { stripThatBlocks } from '../../trades/fuel/jetFlow.ts'
import type { Span } from './causeTypes.ts'

const engines = [{ name: 'engine', lambda: richest }]

/** Torque over that with an open jet, a strip across it shutting `blocked` of its area, 0 to 0.9. */
export const leftWith = (blocked: number): number =>
  chipInJet({ k: stripThatBlocks(blocked), form: 'strip', engine: 0, engines }).torque

/** shares of a jet shut that are felt and not yet the end: judgement */
const shut = { slight: 0.2, severe: 0.46 } as const

export const shortOfFuel: Span = [leftWith(shut.slight), leftWith(shut.severe)]
