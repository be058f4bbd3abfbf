/** Every limit that the judgement of the fuel knows. */
import { type LimitTable, limit } from '../../base/answers/limit.ts'

const practice = 'common practice, no source'
const judgement = 'judgement, no source'

export const fuelLimits = {
  reserve: limit(0.25, '1', 'share over a day’s fuel that the tank should hold: 20 to 30 %', practice),
  unusable: limit(
    0.15,
    '1',
    'share of the tank that the pick-up may leave in the worst lasting lean',
    judgement,
  ),
  ventFill: limit(
    0.85,
    '1',
    'share of the tank below which the vent’s place keeps it from being filled',
    judgement,
  ),
  ventBore: limit(2e-3, 'm', 'hole of a vent below which a drop of petrol or a grain closes it', judgement),
  ventWave: limit(0.1, 'm', 'height over the water under way that the crest of a chop takes', judgement),
  ventIntake: limit(
    0.36,
    'm',
    'from the end of a vent to where air is drawn in, 14 inches',
    'ABYC H-24, gasoline fuel systems, from memory',
  ),
  ventRider: limit(0.3, 'm', 'level distance from the end of a vent to the rider’s place', judgement),
  pumpMargin: limit(1e3, 'Pa', 'suction a pump should have over in the worst lean', judgement),
  gravityHead: limit(
    1.5e3,
    'Pa',
    'pressure that opens the needle of a carburettor fed by gravity, 1 to 2 kPa',
    practice,
  ),
  starves: limit(0, 'Pa', 'margin below which a carburettor runs dry', 'definition of the margin'),
  boilMargin: limit(5, 'K', 'how far the fuel should stay below boiling in the lines', judgement),
  mesh: limit(0.25, '1', 'opening of the filter over the smallest hole behind it', practice),
  leanSet: limit(1.05, '1', 'air ratio above which a two-stroke runs hot at full throttle', 'from memory'),
  richSet: limit(0.7, '1', 'air ratio below which it four-strokes and fouls its plug', 'from memory'),
  leanest: limit(1.2, '1', 'air ratio that no longer fires at full throttle, 1.15 to 1.3', 'from memory'),
  bowlRise: limit(
    1,
    '1',
    'rise of the fuel at the jet over its level below the nozzle: from there it runs out by itself',
    'definition of the level',
  ),
  slam: limit(
    147,
    'm/s²',
    'slam the tank’s fastenings are held to: 15 g, the test of 33 CFR 183.584 for tanks aft of the middle',
    '33 CFR 183.584',
  ),
  strapMargin: limit(1, '1', 'what the fastenings hold over what the slam asks', 'definition of the margin'),
  oilLittle: limit(
    0.015,
    '1',
    'oil over petrol below which plain bearings and pistons are short of it',
    practice,
  ),
  oilMuch: limit(
    0.065,
    '1',
    'oil over petrol above which it fouls plugs and leans the petrol for nothing',
    practice,
  ),
} as const satisfies LimitTable

export type FuelLimits = LimitTable<keyof typeof fuelLimits>
