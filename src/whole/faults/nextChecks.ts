/**
 * Checks that can be made on the bank or afloat: minutes, what each reveals and how far it is trusted (authored judgement), with the
 * cautions that go with it.
 */
import { inMinutes, inSeconds } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'

export interface Check {
  id: string
  act: Sentence
  minutes: number
  /** id of the observable; its states are the outcomes */
  reveals: string
  reliability: number
  cautions: readonly string[]
  /** it lays the fault itself open: what it finds need not be tried by another run before one looks further */
  inspects?: true
  /** a recording that was listened to has told it */
  bySound?: true
  can?: (craft: Craft) => boolean
}

const still = 'Engine off, kill lead pulled, before a hand comes near intake, shaft or impeller.'
const hot = 'Let hot parts cool for ten minutes.'
const petrol = 'Petrol: outdoors, no flame, no hot exhaust, spills wiped and dry before anything runs.'
const tied = 'Tied up: two ropes that hold the full pull, nobody astern or in the loop of a rope.'
const runs = 'Exhaust gas kills in a closed room: run it outdoors only.'
const spark =
  'Keep the plug against the metal of the engine and away from its open hole and from petrol vapour.'

const two = (craft: Craft) => craft.engines.length > 1
const fires = (craft: Craft) => craft.engines.some((e) => e.kind !== 'electric')

export const nextChecks: readonly Check[] = [
  {
    id: 'bolts',
    act: 'Turn every coupling by hand against the other end and put a key on its bolts.',
    minutes: 3,
    reveals: 'coupling',
    reliability: 0.97,
    cautions: [still, hot],
    inspects: true,
  },
  {
    id: 'cup',
    act: say`Let each carburettor’s fuel run into a measuring cup for ${inSeconds(30, 1)} and compare.`,
    minutes: 10,
    reveals: 'cup',
    reliability: 0.95,
    cautions: [petrol, hot],
    can: fires,
    inspects: true,
  },
  {
    id: 'plugs',
    act: 'Take out the plugs and read them.',
    minutes: 8,
    reveals: 'plug',
    reliability: 0.92,
    cautions: [hot],
    can: fires,
  },
  {
    id: 'spark',
    act: 'Turn each engine over with its plug out and held to the metal, in the shade, and look at the spark.',
    minutes: 8,
    reveals: 'spark',
    reliability: 0.92,
    cautions: [spark, petrol],
    can: fires,
    inspects: true,
  },
  {
    id: 'hand',
    act: 'Turn each engine over by hand and feel its compression.',
    minutes: 3,
    reveals: 'hand',
    reliability: 0.95,
    cautions: [still],
    can: fires,
    inspects: true,
  },
  {
    id: 'choke',
    act: say`Half choke for ${inSeconds(3, 1)} at a throttle that is kept.`,
    minutes: 2,
    reveals: 'choke',
    reliability: 0.9,
    cautions: [tied, runs],
    can: fires,
  },
  {
    id: 'cap',
    act: 'Loosen the tank cap and run it again.',
    minutes: 3,
    reveals: 'cap',
    reliability: 0.95,
    cautions: [petrol],
    can: fires,
    inspects: true,
  },
  {
    id: 'grate',
    act: 'Look through the intake grate.',
    minutes: 2,
    reveals: 'intake',
    reliability: 0.96,
    cautions: [still],
    inspects: true,
  },
  {
    id: 'jet',
    act: 'Film the jet from behind at full throttle, tied up.',
    minutes: 3,
    reveals: 'jet',
    reliability: 0.85,
    cautions: [tied],
  },
  {
    id: 'flare',
    act: say`Full throttle tied up for ${inSeconds(10, 1)} and listen whether it races.`,
    minutes: 5,
    reveals: 'raced',
    reliability: 0.85,
    cautions: [tied, runs],
  },
  {
    id: 'opening',
    act: 'Open the throttle slowly, then at once, tied up.',
    minutes: 2,
    reveals: 'opening',
    reliability: 0.85,
    cautions: [tied],
  },
  {
    id: 'feel',
    act: 'Feel couplings and cylinders with the back of a hand held near, right after the stop.',
    minutes: 2,
    reveals: 'heat',
    reliability: 0.85,
    cautions: [still, 'Hot metal: near it, not on it.'],
  },
  {
    id: 'pipes',
    act: 'Drip water on both exhausts right after the stop and compare.',
    minutes: 2,
    reveals: 'pipes',
    reliability: 0.93,
    cautions: ['Hot metal and steam: from arm’s length.'],
    can: (c) => two(c) && fires(c),
  },
  {
    id: 'listen',
    act: 'Listen to the recording again for missing and burbling.',
    minutes: 3,
    reveals: 'sounded',
    reliability: 0.8,
    cautions: [],
    bySound: true,
  },
  {
    id: 'count',
    act: 'Count the engines in the recording.',
    minutes: 2,
    reveals: 'engines',
    reliability: 0.85,
    cautions: [],
    can: two,
    bySound: true,
  },
  {
    id: 'when',
    act: 'Note when the trouble begins.',
    minutes: 1,
    reveals: 'lasted',
    reliability: 0.9,
    cautions: [],
  },
  {
    id: 'smoke',
    act: 'Look at the smoke and smell round the engines.',
    minutes: 1,
    reveals: 'smoke',
    reliability: 0.8,
    cautions: [runs],
  },
  {
    id: 'idle',
    act: 'Let it idle on the water, tied up.',
    minutes: 4,
    reveals: 'idle',
    reliability: 0.85,
    cautions: [tied, runs],
    can: fires,
  },
  {
    id: 'trim',
    act: 'Look at the trim from the side in a video.',
    minutes: 2,
    reveals: 'trim',
    reliability: 0.85,
    cautions: [],
  },
  {
    id: 'pull',
    act: 'Read the pull three times on a luggage scale at full throttle, with the recording running.',
    minutes: 10,
    reveals: 'pull',
    reliability: 0.85,
    cautions: [tied],
  },
  {
    id: 'speed',
    act: 'Time it over a measured distance, both ways.',
    minutes: 8,
    reveals: 'pace',
    reliability: 0.85,
    cautions: ['Afloat: buoyancy aid, kill cord, somebody ashore.'],
  },
  {
    id: 'revs',
    act: say`Record ${inSeconds(20, 1)} tied up at full throttle.`,
    minutes: 3,
    reveals: 'rpm',
    reliability: 0.9,
    cautions: [tied, runs],
    bySound: true,
  },
  {
    id: 'spray',
    act: 'Spray a little water round inlet joints and crank seals at idle.',
    minutes: 6,
    reveals: 'leak',
    reliability: 0.9,
    cautions: ['Water, not anything that burns.', runs],
    can: fires,
    inspects: true,
  },
  {
    id: 'lift',
    act: 'Lift the exhaust outlet clear of the water and run it.',
    minutes: 5,
    reveals: 'lifted',
    reliability: 0.92,
    cautions: [tied, runs],
    can: fires,
    inspects: true,
  },
  {
    id: 'filter',
    act: 'Take off the air filter and look at it.',
    minutes: 3,
    reveals: 'filter',
    reliability: 0.96,
    cautions: [hot],
    can: fires,
    inspects: true,
  },
  {
    id: 'lever',
    act: 'Hold the lever open and look whether every throttle is.',
    minutes: 2,
    reveals: 'throttle',
    reliability: 0.97,
    cautions: ['Engine off.'],
    can: fires,
    inspects: true,
  },
  {
    id: 'line',
    act: 'Look at the fuel line with the engine running.',
    minutes: 2,
    reveals: 'line',
    reliability: 0.92,
    cautions: [petrol],
    can: fires,
  },
  {
    id: 'mixed',
    act: 'Ask who mixed the fuel, when, and how.',
    minutes: 2,
    reveals: 'mixed',
    reliability: 0.92,
    cautions: [],
    can: fires,
    inspects: true,
  },
  {
    id: 'gap',
    act: 'Feel the gap round the impeller with strips of paper.',
    minutes: 10,
    reveals: 'gap',
    reliability: 0.94,
    cautions: [still],
    inspects: true,
  },
  {
    id: 'bore',
    act: 'Measure the nozzle’s bore with a caliper.',
    minutes: 5,
    reveals: 'bore',
    reliability: 0.97,
    cautions: [still],
    inspects: true,
  },
  {
    id: 'pitch',
    act: 'Lay a protractor on the impeller’s blade at the tip and reckon its pitch.',
    minutes: 25,
    reveals: 'pitch',
    reliability: 0.94,
    cautions: [still],
    inspects: true,
  },
  {
    id: 'weigh',
    act: 'Weigh the craft at both ends, look in the bilge and along the bottom.',
    minutes: 12,
    reveals: 'afloat',
    reliability: 0.94,
    cautions: ['Two people to lift.'],
    inspects: true,
  },
  {
    id: 'step',
    act: say`Open the throttle slowly over ${inSeconds(15, 1)}, tied up, and listen for a step.`,
    minutes: 5,
    reveals: 'step',
    reliability: 0.85,
    cautions: [tied, runs],
    can: fires,
  },
  {
    id: 'rest',
    act: say`Let it stand for ${inMinutes(900)} and run it again as before.`,
    minutes: 17,
    reveals: 'rest',
    reliability: 0.92,
    cautions: [tied, runs],
    can: fires,
  },
  {
    id: 'three',
    act: 'Read the pull at three throttles, with the recording running.',
    minutes: 12,
    reveals: 'climb',
    reliability: 0.9,
    cautions: [tied, runs],
  },
  {
    id: 'spare',
    act: 'Fit a spare plug and lead to the engine in doubt and run it again.',
    minutes: 10,
    reveals: 'spare',
    reliability: 0.93,
    cautions: [hot, tied],
    inspects: true,
    can: fires,
  },
  {
    id: 'cooling',
    act: 'Look at the cooling water, or put a hand in the cooling air, with the engine running.',
    minutes: 2,
    reveals: 'stream',
    reliability: 0.9,
    cautions: [runs],
    can: fires,
  },
  {
    id: 'bilge',
    act: 'Look for water inside.',
    minutes: 2,
    reveals: 'water',
    reliability: 0.94,
    cautions: [],
  },
  {
    id: 'start',
    act: 'Note how it started.',
    minutes: 1,
    reveals: 'start',
    reliability: 0.9,
    cautions: [],
  },
]

/** Those that this craft can be given. */
export const checksFor = (craft: Craft): Check[] => nextChecks.filter((c) => c.can?.(craft) ?? true)
