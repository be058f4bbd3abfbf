/** The ten questions a new craft begins with: what is asked, with which tool, and where the answer goes. */
import type { Craft } from '../../../../craft/index.ts'
import type { Tool } from '../../../../drawing/toolSketch.ts'

export interface Asked {
  /** craft path; where several engines are alike, that of the first */
  path: string
  /** further paths that take the same value */
  also?: readonly string[]
}

export interface BeginQuestion {
  id: string
  asks: string
  /** how to find out, one or two short sentences */
  how: string
  tool: Tool
  /** the path whose place on the craft is lit */
  place: string
  fields: readonly Asked[]
  /** a blade angle read by protractor may stand in for the pitch */
  byAngle?: true
}

const ofEach = (craft: Craft, key: string): Asked => ({
  path: `engines.0.${key}`,
  also: craft.engines.slice(1).map((_, i) => `engines.${i + 1}.${key}`),
})

/** The questions for a craft: an electric one is not asked for its displacement. */
export function questionsFor(craft: Craft): readonly BeginQuestion[] {
  const electric = craft.engines[0]?.kind === 'electric'
  const each = craft.engines.length > 1 ? 'each engine' : 'the engine'
  return [
    {
      id: 'size',
      asks: electric ? 'How hard does the motor twist when it is held?' : `How large is ${each}?`,
      how: electric
        ? 'Its most torque: torque per ampere times the most current the controller gives.'
        : 'Displacement stands on the plate or in the maker’s papers, often as cc.',
      tool: 'plate',
      place: 'engines.0',
      fields: [ofEach(craft, electric ? 'most torque' : 'displacement')],
    },
    {
      id: 'power',
      asks: electric
        ? 'How fast does it turn with nothing on it?'
        : `How strong is ${each}, and at what speed?`,
      how: electric
        ? 'Its free speed: the speed constant times the voltage of the battery.'
        : 'Most power and the speed it is given at. Makers’ figures are of a good day: say about.',
      tool: 'plate',
      place: 'engines.0',
      fields: electric ? [ofEach(craft, 'free speed')] : [ofEach(craft, 'power'), ofEach(craft, 'power at')],
    },
    {
      id: 'ratio',
      asks: 'How many turns does the engine make for one of the impeller?',
      how: 'Straight on the shaft it is 1. With a belt, count teeth, or turn the engine and count.',
      tool: 'counting turns',
      place: 'drive.ratio',
      fields: [{ path: 'drive.ratio' }],
    },
    {
      id: 'bore',
      asks: 'How wide is the hole that the impeller turns in?',
      how: 'Across the housing at the blades, twice, a quarter turn apart.',
      tool: 'caliper across a hole',
      place: 'jet.rotor',
      fields: [{ path: 'jet.rotor.bore' }],
    },
    {
      id: 'pitch',
      asks: 'How steep is the impeller?',
      how: 'Its pitch, as drawn or printed; or the angle of a blade’s face near the trailing edge, and how far from the shaft’s middle you read it.',
      tool: 'protractor on a blade',
      place: 'jet.rotor',
      fields: [{ path: 'jet.rotor.pitch' }],
      byAngle: true,
    },
    {
      id: 'nozzle',
      asks: 'How wide is the hole where the jet leaves?',
      how: 'Across the smallest place of the nozzle.',
      tool: 'caliper across a hole',
      place: 'jet.nozzle',
      fields: [{ path: 'jet.nozzle.bore' }],
    },
    {
      id: 'length',
      asks: 'How long is the hull?',
      how: 'From the transom to the bow, along the middle.',
      tool: 'tape along',
      place: 'hull.length',
      fields: [{ path: 'hull.length' }],
    },
    {
      id: 'beam',
      asks: 'How wide is it?',
      how: 'Over the widest place.',
      tool: 'tape across',
      place: 'hull.beam',
      fields: [{ path: 'hull.beam' }],
    },
    {
      id: 'weight',
      asks: 'What does it weigh, fuelled, without you?',
      how: 'Lift the bow with the scale, the stern resting, then the other way round: the sum of both.',
      tool: 'luggage scale',
      place: 'weights.0',
      fields: [{ path: 'weights.0.mass' }],
    },
    {
      id: 'rider',
      asks: 'What do you weigh, dressed for the water?',
      how: 'With buoyancy aid and boots.',
      tool: 'bathroom scale',
      place: 'rider.mass',
      fields: [{ path: 'rider.mass' }],
    },
  ]
}
