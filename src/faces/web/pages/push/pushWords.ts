/** The usual cautions of a pull test and of running a jet; common practice, no source. */
export const cautions: readonly string[] = [
  'Stop the engine and take off the kill cord before a hand goes near the intake, the grate or the nozzle. Weed at the grate waits until the impeller stands still.',
  'Keep hair, straps, cord and sleeves away from the intake and from every turning part; cover belts and couplings.',
  'Tied-up pull: two ropes to something that cannot move, the craft afloat with its intake well under, nobody in line with rope or jet, a second person at the kill switch, short pulls with time to cool.',
  'Wear the kill cord, a buoyancy aid and a helmet. Ride where the law on the water lets you, and ask the local authority before you go.',
  'Engines make carbon monoxide: run them in the open, never in a shed or under a cover, and turn the craft so that the fumes blow away from you.',
  'Petrol burns: fill up with the engine cold, on the bank, away from flames and sparks, and wipe up before starting.',
]

/** How the answer is worked out, a sentence or two a step. */
export const how: readonly string[] = [
  'Engines and impeller are put together at every boat speed: where the torque the engines give meets the torque the impeller takes, they run. All such meetings are found, and which of them hold.',
  'The impeller is cut into rings; each ring turns the water by its blade angles, with losses for friction, tip gap, edges and a stalled blade. Intake, duct and nozzle are added, then cavitation and air.',
  'Drag is followed from floating to full planing with the rider at the best place for each speed; where thrust and drag meet is the top speed. The run from rest adds the mass of the craft and of the water it drags along.',
  'Ranges come from the doubt of each input and of the models, moved one at a time and added as squares (about nineteen cases in twenty). While a slider moves the answer comes without them; they follow.',
]
