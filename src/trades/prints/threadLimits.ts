/** Every limit that the judgement of threads, seals and reach knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'
const seals = 'handbooks of seal makers, from memory'
const openings = 'MIL-STD-1472, openings for hands and arms in light clothing, from memory'
const body = 'S. Pheasant, Bodyspace: British adults, as a part of stature, from memory'

export const printsLimits = {
  sure: limit(0.8, '1', 'odds above which a thread counts as named', judgement),
  tapered: limit(0.5, '1', 'odds above which a neck counts as a taper pipe thread', judgement),
  overhang: limit(0.5, '1', 'part of a laid line that a flank may overhang a layer', practice),
  layers: limit(6, '1', 'layers a pitch below which a printed thread is a stack of steps', practice),
  bite: limit(
    0.4,
    '1',
    'part of the height of a thread that has to be left to bite when both sides stand off by their clearance',
    judgement,
  ),
  squeezeLeast: limit(0.1, '1', 'squeeze of a ring at its worst, below which it weeps', seals),
  squeezePlug: limit(
    0.35,
    '1',
    'squeeze round a plug, at its worst, above which it tears or will not go in',
    seals,
  ),
  squeezeFace: limit(
    0.38,
    '1',
    'squeeze between faces, at its worst, above which a ring is cut or takes a set',
    seals,
  ),
  fill: limit(
    0.95,
    '1',
    'part of a groove that a swollen ring may take at its worst',
    'handbooks of seal makers have 85 % unswollen, from memory; judgement for the swollen one',
  ),
  stretch: limit(0.05, '1', 'lasting stretch of a ring above which it ages fast', seals),
  crowded: limit(0.03, '1', 'how much a ring may be crowded together before it will not lie flat', seals),
  handTorque: limit(
    10,
    'N·m',
    'torque that two hands give a lid of 100 mm and more; in proportion on a smaller one',
    judgement,
  ),
  leak: limit(
    5.9e-8,
    'm³/s',
    'leak under test pressure past layer lines across a seat: a twentieth of what a fuel system may lose',
    '33 CFR 183.590, five ounces in 150 s, from memory; a twentieth of it by judgement',
  ),
  hand: limit(0.095, 'm', 'clear width for a bare hand to the wrist', openings),
  elbow: limit(0.115, 'm', 'clear width for an arm to the elbow', openings),
  shoulder: limit(0.125, 'm', 'clear width for an arm to the shoulder', openings),
  handReach: limit(0.1, '1', 'part of stature from wrist to grip', body),
  elbowReach: limit(0.215, '1', 'part of stature from elbow to grip', body),
  shoulderReach: limit(0.38, '1', 'part of stature from shoulder to grip', body),
} as const satisfies LimitTable

export type PrintsLimits = LimitTable<keyof typeof printsLimits>
