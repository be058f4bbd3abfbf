/** Handbook questions of threads, printed threads, try-pieces and reach. */
import {
  choice,
  count,
  degrees,
  metres,
  mm,
  percent,
  plainRatio,
  seconds,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { fitPieces, readGauge, tryClearances } from './fitPieces.ts'
import { asPrinted, clearanceFor, comesOutAs, type Printer, printerOf, type SizeKind } from './printerOf.ts'
import { reachThrough } from './reachFindings.ts'
import { type ThreadLimits, threadLimits } from './threadFits.ts'
import { leadAngle, metricThread, ownThread, unifiedThread } from './threadForms.ts'
import { gaugeThread } from './threadGauge.ts'
import { identifyThread } from './threadIdentify.ts'
import { printsLimits } from './threadLimits.ts'
import { printedThread } from './threadPrinted.ts'
import type { ThreadSide } from './threadProfile.ts'
import { pipeRows, pipeThreadOf } from './threadSizes.ts'
import { sweptCorners } from './threadSwept.ts'

const sides = ['external', 'internal'] as const
const side = choice('side', 'Of the thread: on the outside of something, or inside it.', sides)
const practice = 'common practice, no source'
const across = mm('d', 'Basic diameter over the crests of the outside thread.', 1e-3, 0.355)
const pitch = mm('pitch', 'From crest to crest.', 0.2e-3, 8e-3)

const limitPorts = [
  mm('majorMost', 'Outside thread, over its crests.'),
  mm('majorLeast', 'Outside thread, over its crests.'),
  mm('pitchMost', 'Outside thread, pitch diameter.'),
  mm('pitchLeast', 'Outside thread, pitch diameter.'),
  mm('insidePitchLeast', 'Inside thread, pitch diameter.'),
  mm('insidePitchMost', 'Inside thread, pitch diameter.'),
  mm('minorLeast', 'Inside thread, across its crests.'),
  mm('minorMost', 'Inside thread, across its crests.'),
] as const

const told = ({ external: e, internal: i }: ThreadLimits) => ({
  majorMost: e.major.high,
  majorLeast: e.major.low,
  pitchMost: e.pitch.high,
  pitchLeast: e.pitch.low,
  insidePitchLeast: i.pitch.low,
  insidePitchMost: i.pitch.high,
  minorLeast: i.minor.low,
  minorMost: i.minor.high,
})

const metricLimits = defineReckoner({
  id: 'metric-thread-limits',
  title: 'Limits of a metric thread',
  trade: 'prints',
  says: 'Least and most diameters of a metric thread of any diameter and pitch of ISO 965-1, normal length of engagement. Outside the standard it says so.',
  inputs: [
    across,
    pitch,
    choice('outside', 'Class of the outside thread.', ['6g', '6h', '6f', '6e', '4h', '5g', '7g', '8g', '9g']),
    choice('inside', 'Class of the inside thread.', ['6H', '4H', '5H', '7H', '8H', '6G', '7G']),
  ],
  outputs: limitPorts,
  reckon: (g, w) =>
    told(threadLimits(metricThread(g.d, g.pitch), { external: w.outside, internal: w.inside })),
  sources: ['ISO 965-1 and ISO 68-1, from memory; rows to 2 mm of pitch compared with printed tables'],
})

const unifiedLimits = defineReckoner({
  id: 'unified-thread-limits',
  title: 'Limits of an inch thread',
  trade: 'prints',
  says: 'Least and most diameters of a unified thread, classes 2A and 2B, by the formulas of the standard; the length engaged is the diameter, as for coarse and fine threads, unless given.',
  inputs: [
    mm('d', 'Diameter.', 2e-3, 0.1016),
    count('perInch', 'Threads an inch.', 4, 80),
    mm('engaged', 'Length engaged; nought for the diameter.', 0, 0.2, 0),
  ],
  outputs: limitPorts,
  reckon: (g) =>
    told(threadLimits(unifiedThread(g.d, g.perInch), g.engaged > 0 ? { engaged: g.engaged } : {})),
  sources: ['ASME B1.1, formulas of classes 2A and 2B, from memory; compared with printed limits'],
})

const pipeLimits = defineReckoner({
  id: 'pipe-thread-limits',
  title: 'Limits of a parallel pipe thread',
  trade: 'prints',
  says: 'Least and most diameters of a parallel pipe thread that seals on a face or washer, not on its flanks.',
  inputs: [
    choice(
      'size',
      'As it is called.',
      pipeRows.map(([name]) => name),
    ),
    choice('class', 'Of the outside thread: A close, B wide.', ['A', 'B']),
  ],
  outputs: [...limitPorts, mm('pitch', 'From crest to crest.')],
  reckon: (_, w) => {
    const thread = pipeThreadOf(w.size)
    return { ...told(threadLimits(thread, { external: w.class })), pitch: thread.pitch }
  },
  sources: ['ISO 228-1, from memory; sizes to G 3/4 compared with a printed table'],
})

const naming = defineReckoner({
  id: 'name-a-thread',
  title: 'Which thread is it',
  trade: 'prints',
  says: 'The likeliest of some five hundred threads for what a caliper tells, and the odds that it is it, the next, or none of them. Spanned pitches are one less than crests counted.',
  inputs: [
    side,
    mm('across', 'Across the crests.', 0.8e-3, 0.25),
    mm('span', 'Along so many pitches.', 0.2e-3, 0.3),
    count('pitches', 'Spanned.', 1, 200),
    mm('acrossDoubt', 'Doubt of the caliper across.', 5e-6, 2e-3, 0.05e-3),
    mm('spanDoubt', 'Doubt along.', 5e-6, 2e-3, 0.1e-3),
    degrees('flanks', 'Angle between them; nought where not known.', 0, 1.75, 0),
    mm('worn', 'What crests may have lost across.', 0, 2e-3, 0),
  ],
  outputs: [
    mm('d', 'Its basic diameter; the one read where none of them is likelier.'),
    mm('pitch', 'Its pitch.'),
    degrees('angle', 'Between its flanks; 60° where it is none of them.'),
    percent('odds', 'That it is it.'),
    percent('next', 'That it is the next.'),
    percent('none', 'That it is none of them.'),
  ],
  reckon: (g, w) => {
    const got = identifyThread({
      side: w.side as ThreadSide,
      across: g.across,
      acrossDoubt: g.acrossDoubt,
      span: g.span,
      spanDoubt: g.spanDoubt,
      pitches: g.pitches,
      worn: g.worn,
      ...(g.flanks > 0 ? { flanks: g.flanks } : {}),
    })
    const [best, next] = got.guesses
    const sure = best !== undefined && best.odds >= got.none
    return {
      d: sure ? best.thread.d : got.free.d,
      pitch: sure ? best.thread.pitch : got.free.pitch,
      angle: sure ? 2 * best.thread.half : Math.PI / 3,
      odds: best?.odds ?? 0,
      next: next?.odds ?? 0,
      none: got.none,
    }
  },
  sources: [
    'Bayes on the limits of ISO 965-1, ASME B1.1 and ISO 228-1; how common each is: judgement, no source',
  ],
})

const printerPorts = [
  choice('kind', 'Of the printer.', ['filament', 'resin']),
  mm('nozzle', 'Bore of the nozzle; width of a pixel for resin.', 0.02e-3, 1.5e-3, 0.4e-3),
  mm('layer', 'Height of a layer.', 0.01e-3, 1e-3, 0.2e-3),
] as const

const printerFor = (g: { nozzle: number; layer: number }, kind: string): Printer => ({
  ...printerOf({}),
  kind: kind as Printer['kind'],
  nozzle: g.nozzle,
  layer: g.layer,
  line: kind === 'filament' ? 1.125 * g.nozzle : g.nozzle,
})

const printed = defineReckoner({
  id: 'printed-thread',
  title: 'A thread to print',
  trade: 'prints',
  says: 'Diameters to draw a printed thread with: moved off its partner by a clearance on the radius, crests as wide as a laid line. Nought of clearance takes the usual one. Print it with its axis upright.',
  inputs: [
    across,
    pitch,
    degrees(
      'half',
      'Between a flank and a plane across the axis: 30° metric, 45° prints easily.',
      0.1,
      1,
      Math.PI / 6,
    ),
    side,
    ...printerPorts,
    mm('clearance', 'On the radius; nought for the usual one.', 0, 1e-3, 0),
    count('facets', 'Sides of the mesh round the axis.', 12, 360, 96),
  ],
  outputs: [
    mm('crest', 'Diameter across its crests.'),
    mm('root', 'Diameter across its roots.'),
    mm('middle', 'Where tooth and gap are alike.'),
    mm('used', 'Clearance on the radius.'),
    mm('layerMost', 'Layer up to which its flanks hold themselves up.'),
    plainRatio('layersAPitch', 'Six and more are wanted.'),
    mm('leadIn', 'Length of its 45° lead-in.'),
    degrees('lead', 'Angle of its helix.'),
    mm('gap', 'To a partner of basic size on the radius, sides of the mesh counted; below nought it jams.'),
  ],
  reckon: (g, w) => {
    const printer = printerFor(g, w.kind)
    const basic =
      Math.abs(g.half - Math.PI / 6) < 1e-6
        ? metricThread(g.d, g.pitch)
        : ownThread({ d: g.d, pitch: g.pitch, height: (0.25 * g.pitch) / Math.tan(g.half), half: g.half })
    const clearance = g.clearance > 0 ? g.clearance : clearanceFor(g.pitch, printer)
    const made = printedThread({ thread: basic, side: w.side as ThreadSide, printer, clearance })
    const { facets } = g
    const mesh = sweptCorners(made.profile, 2 * g.pitch, facets)
    const order = { thread: basic, side: w.side as ThreadSide, from: 0, to: 2 * g.pitch, facets }
    return {
      gap: gaugeThread(mesh, order, clearance).gap,
      crest: 2 * made.profile.crest,
      root: 2 * made.profile.root,
      middle: 2 * made.profile.mid,
      used: clearance,
      layerMost: made.layerMost,
      layersAPitch: made.layersAPitch,
      leadIn: made.leadIn.length,
      lead: leadAngle(basic),
    }
  },
  sources: ['Geometry of ISO 68-1; clearances, flats and layers: common practice, no source'],
})

const tries = defineReckoner({
  id: 'thread-try-pieces',
  title: 'Three clearances to try',
  trade: 'prints',
  says: 'Clearances of the three try-pieces of a metric thread and what they take to print. Keep the tightest that turns on by hand.',
  inputs: [across, pitch, side, ...printerPorts],
  outputs: [
    mm('tight', 'First, on the radius.'),
    mm('middle', 'Second.'),
    mm('loose', 'Third.'),
    seconds('time', 'Of all three on the printer.'),
  ],
  reckon: (g, w) => {
    const printer = printerFor(g, w.kind)
    const [tight, middle, loose] = tryClearances(g.pitch, printer)
    const pieces = fitPieces(metricThread(g.d, g.pitch), w.side as ThreadSide, printer)
    return { tight, middle, loose, time: pieces.reduce((sum, p) => sum + p.time, 0) }
  },
  sources: [practice],
})

const gauge = defineReckoner({
  id: 'printer-try-piece',
  title: 'Reading the try-piece',
  trade: 'prints',
  says: 'Scale, hole offset and elephant foot of a printer from one try-piece: the scale by two bars, so that no hole and no wall upsets it.',
  inputs: [
    mm('barsMeasured', 'Across both bars.', 5e-3, 0.5, 60e-3),
    mm('barsDrawn', 'As drawn.', 5e-3, 0.5, 60e-3),
    mm('holeMeasured', 'Across the hole.', 1e-3, 0.3, 12e-3),
    mm('holeDrawn', 'As drawn.', 1e-3, 0.3, 12e-3),
    mm('footMeasured', 'Across the block at its foot.', 1e-3, 0.5, 20e-3),
    mm('aboveMeasured', 'Across it higher up.', 1e-3, 0.5, 20e-3),
  ],
  outputs: [
    percent('scale', 'As measured over as drawn.'),
    mm('holeOffset', 'How much smaller a hole comes out.'),
    mm('elephantFoot', 'Bulge of the first layers on each side.'),
  ],
  reckon: readGauge,
  sources: ['Derived: a scale acts on every size alike, an offset does not'],
})

const toDraw = defineReckoner({
  id: 'size-to-draw',
  title: 'What to draw for a printed size',
  trade: 'prints',
  says: 'The size to draw so that it comes out as wanted on a printer whose try-piece was measured.',
  inputs: [
    mm('size', 'As wanted.', 0.5e-3, 1),
    choice('what', 'An outside, a hole, a plain length, or the outline of the first layers.', [
      'outside',
      'hole',
      'length',
      'foot',
    ]),
    percent('scale', 'Of the printer.', 0.95, 1.05, 1),
    mm('holeOffset', 'Of the printer.', -0.5e-3, 1.5e-3, 0.25e-3),
    mm('elephantFoot', 'Of the printer.', 0, 1e-3, 0.2e-3),
  ],
  outputs: [mm('drawn', 'To draw.'), mm('uncorrected', 'What it comes out as where it is drawn as wanted.')],
  reckon: (g, w) => {
    const { scale, holeOffset, elephantFoot } = g
    const printer = { ...printerOf({}), scale, holeOffset, elephantFoot }
    const what = w.what as SizeKind
    return { drawn: asPrinted(g.size, what, printer), uncorrected: comesOutAs(g.size, what, printer) }
  },
  sources: [practice],
})

const reach = defineReckoner({
  id: 'hatch-reach',
  title: 'How far a hand comes through a hatch',
  trade: 'prints',
  says: 'How far past the rim of a hole a hand grips: nothing, to the wrist, to the elbow or to the shoulder, by how wide the hole is. In light clothing; a wet suit or gloves want 25 mm more.',
  inputs: [
    mm('clear', 'Least width of the open hole.', 0, 2),
    metres('stature', 'Of whoever works there.', 1, 2.3, 1.75),
  ],
  outputs: [mm('reach', 'From the rim to the grip.')],
  reckon: (g) => ({ reach: reachThrough(g.clear, g.stature, printsLimits) }),
  sources: [printsLimits.shoulder.source, printsLimits.shoulderReach.source],
})

export const threadReckoners: readonly Reckoner[] = [
  metricLimits,
  unifiedLimits,
  pipeLimits,
  naming,
  printed,
  tries,
  gauge,
  toDraw,
  reach,
]
