/** What threads the necks have, how a cap for them is printed, and how each ring sits. SI. */
import type { Sentence } from '../../base/answers/sentence.ts'
import { misfitOf } from './misfit.ts'
import type { Neck, PrintsInputs, RingAsked, SealedHatch } from './printsFromCraft.ts'
import { chooseRing, closingForce, isNoRing, type NoRing, type SeatedRing } from './ringChoice.ts'
import { glandState } from './sealGland.ts'
import { type LinesAcross, leakAcross } from './sealLeak.ts'
import { type Liquid, swellOf } from './sealMaterials.ts'
import { readTaper, type TaperReading } from './taperThreads.ts'
import { ownThread, type Thread } from './threadForms.ts'
import { type Identified, identifyThread, type ThreadGuess } from './threadIdentify.ts'
import { printsLimits } from './threadLimits.ts'
import { closingTorque, handTorque, type PrintedThread, printedThread } from './threadPrinted.ts'

/** A ring in its place, or why there is none. */
export interface SealAnswer {
  name: string
  path: string
  asked: RingAsked
  liquid: Liquid
  swell: number
  seated?: SeatedRing
  none?: NoRing
  /** the room it was sought in: inside and outside, m */
  room: { inner: number; outer: number }
  /** across the ring where layer lines run across */
  across?: LinesAcross
  /** a lid or cap that screws down on it: its thread's diameter, and the torque to close it */
  turned?: { diameter: number; torque: number }
}

export interface NeckAnswer {
  neck: Neck
  named?: Identified
  /** why what was read is no thread, naming field and limit */
  wrong?: Sentence
  /** what it would be, had crests been counted for pitches; only where as counted it is none */
  miscounted?: ThreadGuess
  /** what a cap is made to: the likeliest, or the neck's own size where none is likely */
  thread?: Thread
  /** the cap's thread; absent where no flank would be left */
  cap?: PrintedThread
  capWrong?: Sentence
  seal?: SealAnswer
  /** what a second reading of the crests tells of a taper, or why it tells nothing */
  taper?: TaperReading
  taperWrong?: Sentence
}

export interface PrintsAnswer {
  necks: readonly NeckAnswer[]
  hatches: readonly { hatch: SealedHatch; seal: SealAnswer; thread?: Thread }[]
}

/** K a ring under the deck comes to on a warm day: judgement */
const warm = 313.15
/** Pa, of the pressure test of a fuel system (33 CFR 183.580, 3 psi); viscosity of petrol, Pa s */
const testPressure = 20.7e3
const petrolViscosity = 0.6e-3
const waterPressure = 5e3
const waterViscosity = 1.1e-3

/** Runs a function whose RangeErrors are answers. */
function tried<T>(work: () => T): { value: T } | { wrong: Sentence } {
  try {
    return { value: work() }
  } catch (error) {
    return { wrong: misfitOf(error) }
  }
}

/** The thread a cap is made to: the likeliest, unless it is likelier none of them. */
function threadOf(named: Identified): Thread | undefined {
  const best = named.guesses[0]
  if (best && best.odds >= named.none) return best.thread
  const { d, pitch } = named.free
  const half = Math.PI / 6
  const made = tried(() => ownThread({ d, pitch, height: 0.541 * pitch, half }))
  return 'value' in made ? made.value : undefined
}

/** land left beside a groove, m */
export const wall = 0.2e-3

/** Force that a hand can put on a ring by turning its lid down, N. */
function forceFor(thread: Thread, room: { inner: number; outer: number }): number {
  const ring = (room.inner + room.outer) / 2
  return handTorque(thread.d, printsLimits.handTorque.value) / closingTorque(thread, ring, 1)
}

function sealIn(
  of: { name: string; path: string; liquid: Liquid; asked: RingAsked },
  room: { inner: number; outer: number },
  printer: PrintsInputs['printer'],
  thread: Thread | undefined,
): SealAnswer {
  const { asked, liquid } = of
  const swell = swellOf(asked.material, liquid, warm)
  const base = { ...of, swell, room }
  const got = chooseRing({
    kind: asked.seat,
    ...room,
    wall,
    swell,
    printer,
    ...(thread ? { force: forceFor(thread, room) } : {}),
    ...(asked.ring ? { ring: asked.ring } : {}),
  })
  if (isNoRing(got)) return { ...base, none: got }
  // a groove already there goes before the one that would be drawn
  const gland = {
    ...got.gland,
    depth: asked.depth ?? got.gland.depth,
    width: asked.width ?? got.gland.width,
  }
  if (asked.seat === 'plug') gland.seat = room.outer - 2 * gland.depth
  const state = tried(() => glandState(got.ring, gland, swell))
  if ('wrong' in state)
    return { ...base, none: { field: 'ring', value: gland.depth, limit: got.ring.section } }
  const seated = { ring: got.ring, gland, state: state.value }
  const turned = thread && {
    turned: {
      diameter: thread.d,
      torque: closingTorque(thread, gland.seat - got.ring.section, closingForce(seated)),
    },
  }
  const sealed = { ...base, seated, ...turned }
  if (asked.lines !== 'across') return sealed
  const squeeze = Math.min(0.5, Math.max(0.01, seated.state.squeeze.low))
  const [over, viscosity] =
    liquid === 'water' ? [waterPressure, waterViscosity] : [testPressure, petrolViscosity]
  const across = leakAcross(
    { diameter: gland.seat, section: got.ring.section, squeeze },
    printer,
    over,
    viscosity,
  )
  return { ...sealed, across }
}

function neckAnswer(neck: Neck, printer: PrintsInputs['printer']): NeckAnswer {
  const named = tried(() => identifyThread(neck.reading))
  if ('wrong' in named) return { neck, wrong: named.wrong }
  const thread = threadOf(named.value)
  const miscounted = crestsCounted(neck, named.value)
  const taper = neck.further === undefined ? undefined : tried(() => readTaper(neck.reading, neck.further!))
  const found = {
    neck,
    named: named.value,
    ...(taper === undefined ? {} : 'value' in taper ? { taper: taper.value } : { taperWrong: taper.wrong }),
    ...(thread ? { thread } : {}),
    ...(miscounted ? { miscounted } : {}),
  }
  if (!thread) return found
  const side = neck.reading.side === 'external' ? ('internal' as const) : ('external' as const)
  const cap = tried(() => printedThread({ thread, side, printer }))
  const seal = neckSeal(neck, thread, printer)
  return {
    ...found,
    ...('value' in cap ? { cap: cap.value } : { capWrong: cap.wrong }),
    ...(seal ? { seal } : {}),
  }
}

/** Eight crests are seven pitches: a thread of no table that is a likely one with a pitch less was miscounted. */
function crestsCounted({ reading }: Neck, named: Identified): ThreadGuess | undefined {
  if (named.none < 0.5 || reading.pitches < 2) return undefined
  const again = tried(() => identifyThread({ ...reading, pitches: reading.pitches - 1 }))
  if ('wrong' in again || again.value.none > 0.1) return undefined
  return again.value.guesses[0]
}

/** The ring of a neck: on its mouth inside the root of the thread, or round a plug in its bore; unknown without the bore. */
function neckSeal(neck: Neck, thread: Thread, printer: PrintsInputs['printer']): SealAnswer | undefined {
  if (neck.bore === undefined) return undefined
  const plug = neck.seal.seat === 'plug'
  if (!plug && neck.reading.side === 'internal') return undefined
  const room = plug ? { inner: 0, outer: neck.bore } : { inner: neck.bore, outer: thread.d1 }
  return sealIn(
    { name: neck.name, path: neck.path, liquid: neck.liquid, asked: neck.seal },
    room,
    printer,
    thread,
  )
}

/** the flange of a hatch that its ring lies on is this wide, m on the diameter */
const flange = 30e-3

/** A coarse thread of one's own for a hatch's screwed lid: 45° flanks, which print in usual layers. */
export function hatchThread(clear: number): Thread {
  const pitch = clear > 0.1 ? 6e-3 : 4e-3
  const height = pitch / 4
  // frame of 4 mm between the hole and the root
  return ownThread({ d: clear + 8e-3 + 2 * height, pitch, height, half: Math.PI / 4 })
}

export function printsAnswer({ necks, hatches, printer }: PrintsInputs): PrintsAnswer {
  return {
    necks: necks.map((n) => neckAnswer(n, printer)),
    hatches: hatches.map((hatch) => {
      const screw = hatch.screws ? tried(() => hatchThread(hatch.clear)) : undefined
      const thread = screw && 'value' in screw ? screw.value : undefined
      // a screwed lid's flange presses the ring outside its thread
      const inner = thread ? thread.d + 2e-3 : hatch.clear
      const room =
        hatch.seal.seat === 'plug' ? { inner: 0, outer: hatch.clear } : { inner, outer: inner + flange }
      const of = { name: hatch.name, path: hatch.path, liquid: 'water' as const, asked: hatch.seal }
      return { hatch, seal: sealIn(of, room, printer, thread), ...(thread ? { thread } : {}) }
    }),
  }
}
