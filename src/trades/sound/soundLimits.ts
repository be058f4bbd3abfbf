/**
 * Every limit that the judgement of a recording knows: which events are told, how the answer is worded, how findings stand. Those
 * of events act while a recording is listened to, the others when it is answered. What finds the lines themselves is tuned in
 * settings.ts.
 */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const judgement = 'judgement, no source'
const tuned = 'judgement, tried on this project’s own clips of the tuning seeds'
const bollard = 'after bollard pull trials, which keep a sustained mean; the figure is judgement'
const scale = 'the reading itself; scales of this kind, from memory'
const kinematic = 'pump torque grows with the square of speed'

export const soundLimits = {
  // whether it was an engine, and how sure that is
  shortest: limit(1, 's', 'recording shorter than this tells no engine from a noise', judgement),
  snatch: limit(1.5, 's', 'unbroken line shorter than this is no proof of an engine', tuned),
  roomForMore: limit(4, 's', 'recording from which only snatches are remarkable', judgement),
  heardClearly: limit(0.8, '1', 'confidence above which an engine was heard clearly', judgement),
  heardFairly: limit(0.5, '1', 'confidence above which it was heard fairly clearly', judgement),
  octaveOpen: limit(
    0.5,
    '1',
    'share of the sounding time with the octave open, above which the sound cannot tell',
    judgement,
  ),
  octavePair: limit(
    0.5,
    '1',
    'share of two-line time in a simple ratio, above which the sound cannot tell',
    judgement,
  ),
  // events told
  told: limit(0.25, '1', 'confidence above which an event becomes a finding', judgement),
  unsure: limit(0.5, '1', 'confidence under which an event is told as unsure', judgement),
  startLeast: limit(0.8, 's', 'sounding stretch shorter than this has no start and no stop', judgement),
  ranDown: limit(
    0.92,
    '1',
    'last speed over the one kept before, above which it was cut at speed',
    judgement,
  ),
  starveLeast: limit(
    0.8,
    's',
    'time the speed sags while it still fires, from which an engine starves: without firing a shaft against its pump halves its speed in 0.3 s',
    'I / (k ω) with 2e-3 kg m² and 1.05e-5 N m s² at 628 rad/s; the margin over it is judgement',
  ),
  cutShort: limit(0.5, 's', 'gap under this is a cut-out whatever the speed after it', judgement),
  cutMost: limit(1, 's', 'gap over this is a stop, not a cut-out', judgement),
  cutSame: limit(1.05, '1', 'change of speed over a longer gap that is still the same running', judgement),
  cutSure: limit(0.5, '1', 'confidence on both sides of a cut-out', judgement),
  surge: limit(1.15, '1', 'rise within half a second that is looked at at all', tuned),
  rise: limit(1.8, '1', 'rise of speed that is told', judgement),
  flareLeast: limit(1.17, '1', 'top over the usual speed from which an engine races', tuned),
  idleMost: limit(
    3300,
    'rpm',
    'speed up to which an engine may idle: from there a rise is a throttle opened',
    'small two-strokes idle at 1800 to 3300 rpm, from memory',
  ),
  pullsLeast: limit(
    0.6,
    '1',
    'speed over the highest pulled at before, above which the engine pulls: one of two on a shaft leaves 0.71',
    kinematic,
  ),
  raceSlope: limit(
    7500,
    'rpm/s',
    'steepest rise that a shaft still loaded by its pump makes',
    'engine and pump rotor of 2e-3 kg m² under 4.2 N m rise by 5500 rpm/s, an engine alone by 12000 to 24000; judgement between',
  ),
  opensNear: limit(
    1.1,
    '1',
    'ratio to the other line with which a second line begins when a coupling opens: an engine that starts comes up from idle',
    judgement,
  ),
  deadLeast: limit(
    0.55,
    '1',
    'speed over the one before down to which one dead engine of two may bring a shaft',
    kinematic,
  ),
  deadMost: limit(0.9, '1', 'the same, from which down it is believed', kinematic),
  deadMargin: limit(
    0.05,
    '1',
    'how far outside the balance’s range a step may still be one engine’s death',
    judgement,
  ),
  deadByModel: limit(0.9, '1', 'share of belief in a death whose step is the balance’s', judgement),
  deadByRatio: limit(0.6, '1', 'share of belief where only the usual step is known', judgement),
  step: limit(1.08, '1', 'ratio of two kept speeds from which a step is told', judgement),
  keptLeast: limit(0.8, 's', 'time a speed must stay to be a kept one', judgement),
  keptBand: limit(1.08, '1', 'greatest over least of a kept speed', judgement),
  huntSwing: limit(1.08, '1', 'high over low of a swing that counts', judgement),
  huntMost: limit(1.6, '1', 'high over low of a swing that a hand on the throttle makes', judgement),
  huntEven: limit(2.2, '1', 'how unlike neighbouring swings may be', judgement),
  huntSlowest: limit(3, 's', 'longest time of a swing', judgement),
  huntSwings: limit(2.5, '1', 'swings in a row from which it hunts', judgement),
  flareUsual: limit(
    1.185,
    '1',
    'how far from the usual speed, as a ratio, a loaded engine turns before it races',
    judgement,
  ),
  flareShort: limit(0.2, 's', 'racing shorter than this is none', tuned),
  flareLong: limit(4, 's', 'racing longer than this is a new speed', judgement),
  together: limit(0.4, 's', 'two engines racing within this race together', judgement),
  bogRise: limit(1.1, '1', 'rise before a bog', tuned),
  bogWithin: limit(0.9, 's', 'time after an opening in which a bog begins', tuned),
  bogFall: limit(0.9, '1', 'speed over its crest under which an engine bogs', tuned),
  bogBack: limit(2, 's', 'time in which a bog is made up again', tuned),
  bogRegained: limit(0.95, '1', 'share of the crest that counts as made up', tuned),
  bogHeld: limit(
    1.5,
    's',
    'time the speed made up must hold: a throttle worked by hand comes down sooner',
    tuned,
  ),
  bogKept: limit(0.8, '1', 'share of it that it must keep', tuned),
  fall: limit(0.85, '1', 'speed over the one before under which it has fallen', judgement),
  fallQuick: limit(
    1,
    's',
    'time within which a fall happens: slower is a change of load or throttle',
    judgement,
  ),
  fallSettled: limit(1.5, 's', 'time the speed must have kept before a fall', judgement),
  fallBand: limit(1.12, '1', 'greatest over least speed of that time', judgement),
  fallHolds: limit(1.5, 's', 'time a fallen speed must hold', judgement),
  fallBack: limit(0.92, '1', 'share of the speed before at which a fall is over', judgement),
  dipLongest: limit(6, 's', 'fall made up later than this has stayed', judgement),
  dipDeepest: limit(
    0.53,
    '1',
    'speed over the one before under which a throttle was closed for a while',
    judgement,
  ),
  fallDeepest: limit(
    0.65,
    '1',
    'the same where it stays down: 0.65 takes 27 % of the power, one engine of two leaves 0.71',
    kinematic,
  ),
  sprayFall: limit(
    0.85,
    '1',
    'speed over that of 0.2 s before, with spray, under which water hit',
    judgement,
  ),
  sprayBurst: limit(10, '1', 'hiss over its usual power that is a burst of spray', judgement),
  carries: limit(0.04, '1', 'loss of speed above which the engine left carries both', judgement),
  // how evenly it fires
  weakSome: limit(0.03, '1', 'share of weak cycles above which it misfires now and then', tuned),
  weakMany: limit(0.06, '1', 'share of weak cycles above which it misfires', tuned),
  halfOrders: limit(
    9,
    'dB',
    'half orders over their floor with which alternate firing is four-stroking',
    tuned,
  ),
  halfOrdersAlone: limit(
    13,
    'dB',
    'half orders over their floor that are four-stroking by themselves',
    tuned,
  ),
  alternating: limit(0.3, '1', 'how far, against each other, neighbouring cycles alternate', tuned),
  // beside what the craft expects
  octaveMargin: limit(0.08, '1', 'part outside the predicted range that is still that reading', judgement),
  overRedline: limit(1.35, '1', 'most speed free of load over the redline', judgement),
  fullThrottle: limit(
    0.75,
    '1',
    'part of the predicted speed under which the throttle was not open',
    judgement,
  ),
  believed: limit(0.5, '1', 'confidence from which a speed is compared', judgement),
  steadyBand: limit(0.03, '1', 'how far from its middle a steady speed wanders', judgement),
  steadyLeast: limit(2, 's', 'shortest steady stretch that is compared', judgement),
  edge: limit(2, 's', 'time beyond the ends of a prediction for which they hold', judgement),
  hearingError: limit(0.004, '1', 'error of a heard speed', 'docs/hearing.md'),
  matchLikeness: limit(0.5, '1', 'likeness from which a track is matched to the sound', tuned),
  matchSecond: limit(
    0.85,
    '1',
    'next best likeness over the best, above which there is no clear match',
    tuned,
  ),
  pullSpread: limit(0.04, '1', 'spread of enough readings, with that of the scale', bollard),
  pullSpreadFew: limit(0.06, '1', 'the same of fewer readings', bollard),
  pullReading: limit(0.2, 'kg', 'what a reading is rounded or jumps by', scale),
  pullEnough: limit(3, '1', 'readings that are enough', bollard),
} as const satisfies LimitTable

export type SoundLimits = LimitTable<keyof typeof soundLimits>
