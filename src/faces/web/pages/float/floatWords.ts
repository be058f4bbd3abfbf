/** The two stabilities of a standing rider, in a builder's words. */
export const gmWords: readonly string[] = [
  'GM is how far the whole weight could still rise before the craft falls over by itself: 5 cm is lively, 20 cm is steady, below nothing it tips.',
  'With a rider held stiff, like a sack tied upright, his centre of gravity counts: high up when standing, so this GM is often below nothing.',
  'A rider who keeps his balance moves his body over his feet. The craft then only feels his weight where he touches the deck, and that GM is much larger. If it is above nothing you can learn to ride it, as one learns a bicycle; if it is below, nobody can.',
]
