import type { MeasureNext } from '../../../../base/answers/finding.ts'

/** The usual cautions of exhausts and running engines; common practice, no source. */
export const cautions: readonly string[] = [
  'Exhaust gas holds carbon monoxide, which has no smell and kills: run engines in the open only, never in a shed or under a cover, and stay out of the fumes.',
  'A pipe is hot enough to burn skin and to light petrol for a long time after the engine stops: shield it, keep fuel lines, foam and straps off it, let it cool before a hand goes near.',
  'A short or wide-open exhaust hurts the ears at arm’s length: wear ear protection, and mind the neighbours and the law on the water.',
  'A stinger that is too small overheats the piston, one that is too large loses pull: change it in small steps, read the plug after each, and stop when the engine runs hot or rings.',
  'Weld and grind a pipe only when it is clean, dry and off the engine, with no petrol in the room; oily residue smokes and burns.',
  'Measure with the spark plug lead off and earthed and the fuel shut, so that a turn of the crank cannot start the engine.',
]

/** How the answer is worked out, a sentence or two a step. */
export const how: readonly string[] = [
  'The gas in the pipe is followed cell by cell through each turn of the crank, with friction, heat lost to the wall and the wall’s own temperature; cylinder and crankcase are volumes joined to it through the ports as they open and close.',
  'At every speed cycles are run until they repeat. A speed that does not settle has no point on the curve, and the curve has a gap there.',
  'A rough curve on cells of 20 mm comes first, the one that counts on cells of 10 mm; the band comes from six inputs moved one at a time to both ends of what is known of them, added as squares, on 20 mm cells.',
  'The books of mass, energy and fresh charge are summed for each point; where they do not close, the finding on trust says so.',
  'The muffler’s curve is for plane waves in still gas: it holds below the first cross mode and says nothing of noise through the shell.',
]

/** What turns an engine known by its curve into one that can be simulated; minutes with the usual tools. */
export const toSimulate: readonly MeasureNext[] = [
  {
    what: 'Bore and stroke',
    with: 'caliper and depth gauge, head off or through the plug hole',
    minutes: 15,
  },
  {
    what: 'When exhaust and transfers open, in degrees after top dead centre',
    with: 'degree wheel, pointer and a 0.05 mm feeler held in the port',
    minutes: 30,
  },
  { what: 'Width and corners of the ports', with: 'paper and pencil rubbing, caliper', minutes: 20 },
  { what: 'Combustion space', with: 'syringe and thin oil through the plug hole', minutes: 20 },
  {
    what: 'The pipe: length of each cone along the outside and the inside, and round the outside at each joint',
    with: 'string and tape',
    minutes: 20,
  },
  { what: 'Stinger bore and length', with: 'caliper and tape', minutes: 3 },
]
