/** Handbook questions of what printed parts bear, of taper threads, and of a blade cut off. */
import {
  choice,
  count,
  grams,
  kgPerCubicMetre,
  megapascals,
  metresPerSecond,
  mm,
  newtons,
  percent,
  plainRatio,
  revsPerMinute,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { printMaterials } from '../../craft/schema/printerFields.ts'
import { cutBlades } from './bladeCut.ts'
import { partLimits } from './partLimits.ts'
import { barBending, bears, discBending, tubeBending } from './partStrength.ts'
import type { PrintMaterial } from './printerOf.ts'
import { readTaper } from './taperThreads.ts'
import type { ThreadSide } from './threadProfile.ts'

const beams = 'Bending of beams and tubes by any handbook of strength, exact'
const force = newtons('force', 'On it.', 0, 1e5)
const stress = megapascals('stress', 'Most it is asked for.')
const yesNo = ['no', 'yes'] as const

const lid = defineReckoner({
  id: 'lid-under-a-foot',
  title: 'Round lid under a foot',
  trade: 'prints',
  says: 'Bending of a round lid held simply at its edge under a load on a round patch in its middle.',
  inputs: [
    force,
    mm('radius', 'Of the ring it is held on.', 5e-3, 1),
    mm('patch', 'Radius of what presses; a heel has about 40 mm.', 1e-3, 1, 40e-3),
    mm('thickness', 'Of the lid.', 0.5e-3, 0.1),
  ],
  outputs: [stress],
  reckon: (g) => ({ stress: discBending(g.force, g.radius, g.patch, g.thickness) }),
  sources: ['Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16, from memory'],
})

const bar = defineReckoner({
  id: 'bracket-root',
  title: 'Root of a bracket',
  trade: 'prints',
  says: 'Bending at the root of a bar, a gusset or an ear that sticks out.',
  inputs: [
    force,
    mm('arm', 'From the root to the force.', 0, 1),
    mm('wide', 'Of the root, across the force.', 0.5e-3, 1),
    mm('deep', 'Of the root, along the force.', 0.5e-3, 1),
  ],
  outputs: [stress],
  reckon: (g) => ({ stress: barBending(g.force, g.arm, g.wide, g.deep) }),
  sources: [beams],
})

const tube = defineReckoner({
  id: 'barb-root',
  title: 'Root of a barb',
  trade: 'prints',
  says: 'Bending at the foot of a tube pulled aside at its end.',
  inputs: [
    force,
    mm('arm', 'From the foot to the force.', 0, 1),
    mm('across', 'Of the tube, outside.', 1e-3, 0.5),
    mm('bore', 'Of the tube; less than it is across.', 0, 0.5, 0),
  ],
  outputs: [stress],
  reckon: (g) => ({ stress: tubeBending(g.force, g.arm, g.across, g.bore) }),
  sources: [beams],
})

const borne = defineReckoner({
  id: 'print-bears',
  title: 'What a print bears',
  trade: 'prints',
  says: 'The stress a solid print may be asked for: its strength over four where the load stays, as plastic creeps, over eight where it comes again and again, and less across its layers.',
  inputs: [
    choice('material', 'It is printed of.', printMaterials),
    choice('across', 'Whether the load pulls its layers apart.', yesNo),
    choice('often', 'Whether the load comes again and again.', yesNo),
  ],
  outputs: [stress],
  reckon: (_, w) => ({
    stress: bears(
      w.material as PrintMaterial,
      { across: w.across === 'yes', often: w.often === 'yes' },
      partLimits,
    ),
  }),
  sources: ['Data sheets of the stock, from memory', partLimits.steady.source],
})

const taper = defineReckoner({
  id: 'taper-thread',
  title: 'Is it a taper pipe thread',
  trade: 'prints',
  says: 'From the crests read at both ends of a span: how it grows, the odds that it is a taper pipe thread (one in sixteen), and the size over its crests at the small end of the likeliest. A taper thread seals on its flanks: no printed cap fits it.',
  inputs: [
    choice('side', 'Of the thread: on the outside of something, or inside it.', ['external', 'internal']),
    mm('across', 'Across the crests at the mouth.', 5e-3, 0.25),
    mm('further', 'Across the crests at the other end of the span.', 5e-3, 0.25),
    mm('span', 'Along so many pitches.', 1e-3, 0.3),
    count('pitches', 'Spanned.', 1, 60),
    mm('acrossDoubt', 'Doubt of the caliper across.', 5e-6, 2e-3, 0.05e-3),
    mm('spanDoubt', 'Doubt along.', 5e-6, 2e-3, 0.1e-3),
  ],
  outputs: [
    plainRatio('taper', 'Gained across for what is gone along; 0.0625 for pipe threads.'),
    percent('odds', 'That it is a taper pipe thread.'),
    mm('small', 'Over the crests of the likeliest at its small end; nought where none is near.'),
    mm('pitch', 'Of the likeliest; nought where none is near.'),
  ],
  reckon: (g, w) => {
    const { across, span, pitches, acrossDoubt, spanDoubt } = g
    const side = w.side as ThreadSide
    const got = readTaper({ side, across, span, pitches, acrossDoubt, spanDoubt }, g.further)
    const best = got.guesses[0]?.thread
    return { taper: got.taper, odds: got.odds, small: best?.small ?? 0, pitch: best?.pitch ?? 0 }
  },
  sources: ['ISO 7-1 and ASME B1.20.1, from memory; how often a neck is tapered: judgement, no source'],
})

const cut = defineReckoner({
  id: 'blade-cut-off',
  title: 'A blade cut off an impeller',
  trade: 'prints',
  says: 'How deep a hole opposite in the hub puts it in balance again, and what is left where no hole is deep enough. Every second blade cut off leaves it even.',
  inputs: [
    count('blades', 'It had.', 2, 12),
    count('cut', 'Blades cut off.', 1, 11),
    grams('bladeMass', 'Of one blade.', 1e-4, 5),
    mm('bladeArm', 'From the axis to the middle of a blade.', 5e-3, 0.5),
    grams('mass', 'Of what is left of it.', 1e-3, 20),
    revsPerMinute('rotation', 'It runs at.', 1, 500),
    kgPerCubicMetre('density', 'Of the hub.', 500, 9000, 1270),
    mm('hole', 'Across the hole.', 0.5e-3, 0.05, 8e-3),
    mm('holeArm', 'From the axis to the middle of the hole.', 2e-3, 0.2),
    mm('deepest', 'The hole may go.', 0, 0.5),
  ],
  outputs: [
    mm('deep', 'The hole, as drilled.'),
    percent('left', 'Of the unbalance, with the hole.'),
    metresPerSecond('grade', 'Grade of what is left; up to 0.016 is usual for such a rotor (G 16).'),
  ],
  reckon: (g) => {
    const { before, after, deep, grade } = cutBlades(g)
    return { deep, left: before > 0 ? after / before : 0, grade }
  },
  sources: ['Moments of mass, exact; grades of ISO 21940-11, from memory'],
  cautions: ['An impeller out of balance tears its bearing and its blades: stop at the first shaking.'],
})

export const partReckoners: readonly Reckoner[] = [lid, bar, tube, borne, taper, cut]
