/** What the threads of necks and lids are, how sure that is, and whether the printer can make their partners. */
import { inCount, inDegrees, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Because, Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { tryClearances } from './fitPieces.ts'
import type { Printer } from './printerOf.ts'
import type { NeckAnswer, PrintsAnswer } from './printsAnswer.ts'
import { findingsBy, fine } from './printsFinding.ts'
import type { PrintsInputs } from './printsFromCraft.ts'
import { isTapered, taperFindings } from './taperFindings.ts'
import type { Thread } from './threadForms.ts'
import type { Identified, ThreadGuess } from './threadIdentify.ts'
import type { PrintsLimits } from './threadLimits.ts'
import { steepestLayer } from './threadPrinted.ts'

const sources = [
  'ISO 261 and ISO 965-1, ASME B1.1, ISO 228-1: sizes and limits of threads, from memory',
  'How common a thread is: judgement, no source',
]

const finding = findingsBy(sources)

const tenth = (x: number) => inMm(x, 0.1)
/** odds as a builder takes them: nothing is surer than ninety-nine in a hundred */
const byOdds = (x: number): Sentence =>
  x > 0.99
    ? say`by more than ${inPercent(0.99)}`
    : x < 0.01
      ? say`by less than ${inPercent(0.01)}`
      : say`by ${inPercent(x)}`
const oddsOf = (g: ThreadGuess): Sentence => say`${g.thread.name} ${byOdds(g.odds)}`

const readings = ({ neck, named }: NeckAnswer): Because[] => [
  { says: say`${fine(neck.reading.across)} across the crests`, link: `${neck.path}.over crests` },
  ...(named
    ? [
        {
          says: say`${inCount(neck.reading.pitches)} pitches in ${fine(neck.reading.span)}: a pitch of ${inMm(named.pitch, 0.001)}`,
          link: `${neck.path}.span`,
        },
      ]
    : []),
]

/** What would tell the first two apart, as an order. */
function tellApart(named: Identified): Sentence {
  const { next, guesses } = named
  const [a, b] = guesses
  if (!next || !a || !b) return 'count ten pitches and measure along them once more'
  if (next.by === 'pitches')
    return say`measure along ${inCount(next.pitches ?? 10)} pitches: ${tenth(next.first)} is ${a.thread.name}, ${tenth(next.second)} is ${b.thread.name}`
  if (next.by === 'flanks')
    return say`hold a thread gauge to it: flanks of ${inDegrees(next.first, 1)} are ${a.thread.name}, ${inDegrees(next.second, 1)} are ${b.thread.name}`
  return say`measure across the crests at three places: ${fine(next.first)} and a little less is ${a.thread.name}, ${fine(next.second)} is ${b.thread.name}`
}

function namedFinding(answer: NeckAnswer, limits: PrintsLimits): Finding {
  const { neck, named, wrong } = answer
  const id = `thread.${neck.path}`
  if (!named)
    return finding(id, {
      says: say`The thread of the neck of ${neck.name} cannot be named: ${wrong ?? 'it was not read'}.`,
      standing: 'unknown',
      because: readings(answer),
      measureNext: {
        what: 'measure across the crests, and along as many pitches as there are, once more',
        with: 'caliper',
        minutes: 5,
        path: `${neck.path}.span`,
      },
    })
  const [best, ...others] = named.guesses
  if (!best || named.none > best.odds) return noneFinding(answer, named, id)
  const also = others.filter((g) => g.odds >= 0.01).slice(0, 3)
  const rest = [...also.map(oddsOf), say`none of these ${byOdds(named.none)}`]
  const says = say`The neck of ${neck.name} has ${oddsOf(best)}; ${joined(rest)}.`
  if (best.odds >= limits.sure.value)
    return finding(id, { says, value: best.odds, unit: '1', standing: 'good', because: readings(answer) })
  return finding(id, {
    says,
    value: best.odds,
    unit: '1',
    standing: 'watch',
    because: readings(answer),
    act: tellApart(named),
    harm: 'comfort',
    measureNext: {
      what: 'measure along more pitches, or hold a thread gauge to it',
      with: 'caliper or thread gauge',
      minutes: 5,
      path: `${neck.path}.span`,
    },
  })
}

function noneFinding(answer: NeckAnswer, named: Identified, id: string): Finding {
  const { neck, miscounted } = answer
  const nearest = named.guesses[0]
  return finding(id, {
    says: say`The neck of ${neck.name} has a thread of no table ${byOdds(named.none)}: ${fine(named.free.d)} with a pitch of ${fine(named.pitch)}.`,
    value: named.none,
    unit: '1',
    standing: 'watch',
    because: [
      ...readings(answer),
      ...(nearest ? [{ says: say`the nearest is ${oddsOf(nearest)}` }] : []),
      ...(miscounted
        ? [
            {
              says: say`with ${inCount(neck.reading.pitches - 1)} pitches for as many crests and one it would be ${oddsOf(miscounted)}`,
              link: `${neck.path}.pitches`,
            },
          ]
        : []),
    ],
    act: miscounted
      ? say`count once more, pitches and not crests: ${inCount(neck.reading.pitches - 1)} of them in ${fine(neck.reading.span)} are ${miscounted.thread.name}`
      : say`print a cap to its own size, ${fine(named.free.d)} with a pitch of ${fine(named.pitch)}, and a ring of two turns before it`,
    harm: 'comfort',
  })
}

interface ToPrint {
  name: string
  path: string
  thread: Thread
}

/** The printer's layers against the flanks, and against the pitch. */
function layerFindings({ name, path, thread }: ToPrint, printer: Printer, limits: PrintsLimits): Finding[] {
  const most = (steepestLayer(thread.half, printer.line) * limits.overhang.value) / 0.5
  const enough = thread.pitch / limits.layers.value
  const layer = Math.min(most, enough)
  if (printer.layer <= layer * (1 + 1e-9)) return []
  const steps = printer.layer > enough
  return [
    finding(`layers.${path}`, {
      says: steps
        ? say`The thread of ${name} comes out as steps: a pitch of ${fine(thread.pitch)} has ${inCount(Math.floor(thread.pitch / printer.layer))} layers of ${fine(printer.layer)}, and wants ${inCount(limits.layers.value)}.`
        : say`The flanks of the thread of ${name} droop in layers of ${fine(printer.layer)}: ${inDegrees(thread.half, 1)} flanks hold themselves up to ${fine(most)}.`,
      standing: 'watch',
      because: [
        { says: say`a laid line is ${fine(printer.line)} wide`, link: 'printer.nozzle' },
        { says: say`layers of ${fine(printer.layer)}`, link: 'printer.layer' },
      ],
      act: say`print ${name} in layers of ${inMm(Math.floor(layer * 1e5) / 1e5, 0.01)} or thinner, its axis upright`,
      harm: 'comfort',
      ...(steps ? { twin: 'thread layers' } : {}),
    }),
  ]
}

/** What is left to bite when both sides stand off. */
function biteFinding(answer: NeckAnswer, printer: Printer, limits: PrintsLimits): Finding[] {
  const { neck, thread, cap, capWrong } = answer
  if (!thread) return []
  if (!cap)
    return [
      finding(`bite.${neck.path}`, {
        says: say`${printer.kind === 'resin' ? 'This printer' : 'This nozzle'} cannot make ${thread.name} for ${neck.name}: ${capWrong ?? 'no flank is left'}.`,
        standing: 'watch',
        because: [{ says: say`a laid line is ${fine(printer.line)} wide`, link: 'printer.nozzle' }],
        act: say`buy a cap of metal or moulded plastic with ${thread.name}, or print it with a nozzle of ${inMm(Math.min(0.2e-3, thread.pitch / 4), 0.05)} or finer`,
        harm: 'comfort',
      }),
    ]
  const full = (thread.d - thread.d1) / 2
  const own = Math.abs(cap.profile.crest - (cap.profile.side === 'internal' ? thread.d : thread.d1) / 2)
  const bite = own / full
  if (bite >= limits.bite.value) return []
  return [
    finding(`bite.${neck.path}`, {
      says: say`A printed ${thread.name} for ${neck.name} bites by ${fine(own)} only, ${inPercent(bite)} of its height: it jumps its turns under a hard hand.`,
      value: bite,
      unit: '1',
      standing: 'watch',
      because: [
        { says: say`a clearance of ${fine(cap.clearance)}`, link: 'printer.thread clearance' },
        { says: say`a laid line of ${fine(printer.line)} blunts the crest`, link: 'printer.nozzle' },
      ],
      act: say`print its three try-pieces and keep the tightest that turns on, or use a nozzle of ${inMm(Math.min(0.2e-3, thread.pitch / 4), 0.05)}`,
      harm: 'comfort',
    }),
  ]
}

/** Nobody has tried the printer yet: the three rings come first. */
function tryFinding(toPrint: readonly ToPrint[], printer: Printer): Finding[] {
  const first = toPrint[0]
  if (!first || printer.tried) return []
  const [low, middle, high] = tryClearances(first.thread.pitch, printer)
  return [
    finding('try', {
      says: say`How much clearance this printer’s threads want is not known: ${fine(middle)} on the radius is what most want.`,
      standing: 'watch',
      because: [{ says: 'no thread clearance in the file', link: 'printer.thread clearance' }],
      act: say`print the three try-pieces for ${first.name}, ${fine(low)}, ${fine(middle)} and ${fine(high)}, and write the tightest that turns on to printer: thread clearance`,
      harm: 'comfort',
    }),
  ]
}

/** Findings of threads. */
export function threadFindings(inputs: PrintsInputs, answer: PrintsAnswer, limits: PrintsLimits): Finding[] {
  const { printer } = inputs
  const caps = answer.necks.flatMap((n): ToPrint[] =>
    n.neck.printed && n.thread && !isTapered(n, limits)
      ? [{ name: `the cap of ${n.neck.name}`, path: n.neck.path, thread: n.thread }]
      : [],
  )
  const lids = answer.hatches.flatMap((h): ToPrint[] =>
    h.thread ? [{ name: `the lid of ${h.hatch.name}`, path: h.hatch.path, thread: h.thread }] : [],
  )
  const all = [...caps, ...lids]
  return [
    ...answer.necks.flatMap((n) => (isTapered(n, limits) ? [] : [namedFinding(n, limits)])),
    ...answer.necks.flatMap((n) => taperFindings(n, limits)),
    ...answer.necks.flatMap((n) =>
      n.neck.printed && !isTapered(n, limits) ? biteFinding(n, printer, limits) : [],
    ),
    ...all.flatMap((t) => layerFindings(t, printer, limits)),
    ...tryFinding(all, printer),
  ]
}
