/** Every limit that the judgement of the bay knows, and what printed plastics bear for long. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'
const sheets = 'data sheets of EPS and XPS: 74 to 75 °C for long'

export const bayLimits = {
  foam: limit(338.15, 'K', 'air that polystyrene foam should stand in for long: ten below its limit', sheets),
  melt: limit(353.15, 'K', 'air in which polystyrene foam loses its shape within minutes', sheets),
  fuel: limit(
    323.15,
    'K',
    'air at which petrol in a line or a bowl begins to boil off: vapour pressure of summer petrol near that of the air',
    'petrol of 60 kPa Reid vapour pressure (EN 228) by Clausius and Clapeyron, 30 kJ/mol',
  ),
  engine: limit(343.15, 'K', 'air that an air-cooled engine should breathe or be cooled by', judgement),
  printedBelow: limit(5, 'K', 'how far below what its plastic bears for long a print should stay', judgement),
  suction: limit(
    500,
    'Pa',
    'suction in the bay above which the engines lose half a per cent and more',
    judgement,
  ),
  suctionStop: limit(5000, 'Pa', 'suction in the bay at which the engines starve', judgement),
  waterOut: limit(333.15, 'K', 'cooling water past which scale and steam begin', practice),
  waterRise: limit(3, 'K', 'rise of cooling water below which far more is pumped than is used', judgement),
  waterIdle: limit(353.15, 'K', 'the same at idle, where the jet hardly pushes', practice),
  lowOpening: limit(
    1935e-6,
    'm²',
    'least clear area of an opening that lets vapour out: 3 square inches',
    '33 CFR 183.630',
  ),
  lowThird: limit(1 / 3, '1', 'part of the depth below which vapour is drawn off', '33 CFR 183.630'),
  airing: limit(240, 's', 'airing before a start that a builder will wait for', practice),
  monoxide: limit(
    1200e-6,
    '1',
    'carbon monoxide at once dangerous to life',
    'NIOSH: IDLH 1200 ppm, from memory',
  ),
  standing: limit(
    318.15,
    'K',
    'bay in the sun at rest, in which petrol in a full tank and PLA give way',
    judgement,
  ),
} as const satisfies LimitTable

export type BayLimits = LimitTable<keyof typeof bayLimits>

/** K for long in air without load: common practice of printing, from data sheets; no standard */
export const printedBears: Readonly<Record<string, number>> = {
  PLA: 313.15,
  PETG: 328.15,
  ABS: 348.15,
  ASA: 353.15,
  PC: 373.15,
  PA12: 363.15,
  POM: 353.15,
  PVDF: 363.15,
  HDPE: 328.15,
}
