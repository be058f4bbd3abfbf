/** The usual cautions of anything that floats; common practice, no source. */
export const cautions: readonly string[] = [
  'Drowning: wear a buoyancy aid and the kill cord every time, also for a first try in shallow water. Cold water takes your strength within minutes.',
  'Never alone: the first floats and every swamping trial with a second person who can swim, close to the shore, engine off.',
  'A swamped craft may roll over and is no raft to count on; air in a sealed space can be lost through one hole, foam cannot.',
  'What is computed here is still water at rest. Waves, wash and a turning craft ask for more; ask the local authority which rules bind a home-built craft where you ride.',
]

export const how: readonly string[] = [
  'The hull is a closed mesh of triangles; volume, centre and waterplane below the water are exact sums over it. The craft is settled where its weight and the water pushed away hold each other, in draft, trim and heel at once.',
  'A rider who balances acts where feet, knees or seat touch the deck; one held stiff acts at his own centre of gravity. Standing, that centre is about 0.56 of his height above the deck.',
  'The righting arm is the distance between the lines of weight and buoyancy at each heel, with draft and trim found anew. Swamped, only foam, sealed spaces and the material itself still push water away.',
  'The rider’s room is worked out place by place, 5 cm apart: heel within 10°, trim within 6°, and no opening under. A leak is followed with the water running to the low side.',
]

/** The two stabilities of a standing rider, in a builder's words. */
export const gmWords: readonly string[] = [
  'GM is how far the whole weight could still rise before the craft falls over by itself: 5 cm is lively, 20 cm is steady, below nothing it tips.',
  'With a rider held stiff, like a sack tied upright, his centre of gravity counts: high up when standing, so this GM is often below nothing.',
  'A rider who keeps his balance moves his body over his feet. The craft then only feels his weight where he touches the deck, and that GM is much larger. If it is above nothing you can learn to ride it, as one learns a bicycle; if it is below, nobody can.',
]
