/** The craft file to what is printed, screwed and sealed: necks with their threads, hatches, rings, the printer. SI. */
import type { Sentence } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { misfitOf } from './misfit.ts'
import { type Printer, printerOf } from './printerOf.ts'
import { type ReachPlaces, reachPlaces } from './reachPlaces.ts'
import { freeRing, type Ring, ringOf } from './ringSizes.ts'
import type { Liquid, SealMaterial } from './sealMaterials.ts'
import type { ThreadReading } from './threadIdentify.ts'

type RingInFile = NonNullable<Craft['openings'][number]['ring']>

/** What the file says of the ring under a cap or lid. */
export interface RingAsked {
  /** the ring by size or by inside and section; absent where one is to be chosen */
  ring?: Ring
  /** why what the file says is no ring, naming field and limit */
  wrong?: Sentence
  material: SealMaterial
  seat: 'face' | 'plug'
  lines: 'along' | 'across' | 'none'
  depth?: number
  width?: number
  path: string
}

/** A filler neck and what is known of its thread. */
export interface Neck {
  name: string
  path: string
  liquid: Liquid
  reading: ThreadReading
  /** across the crests at the other end of the span, m */
  further?: number
  /** m, inside at the mouth */
  bore?: number
  printed: boolean
  seal: RingAsked
}

export interface SealedHatch {
  name: string
  path: string
  clear: number
  screws: boolean
  seal: RingAsked
}

export interface PrintsInputs {
  printer: Printer
  /** the file has a printer section */
  printerKnown: boolean
  necks: readonly Neck[]
  hatches: readonly SealedHatch[]
  reach: ReachPlaces
}

function ringAsked(ring: RingInFile | undefined, path: string): RingAsked {
  if (!ring) return { material: 'FKM', seat: 'face', lines: 'along', path }
  let given: Ring | undefined
  let wrong: Sentence | undefined
  try {
    if (ring.size !== undefined) given = ringOf(ring.size)
    else if (ring.inside && ring.section) given = freeRing(ring.inside.value, ring.section.value)
  } catch (error) {
    wrong = misfitOf(error)
  }
  return {
    ...(given ? { ring: given } : {}),
    ...(wrong === undefined ? {} : { wrong }),
    material: ring.material,
    seat: ring.seat,
    lines: ring.lines,
    ...(ring.depth ? { depth: ring.depth.value } : {}),
    ...(ring.width ? { width: ring.width.value } : {}),
    path: `${path}.ring`,
  }
}

/** caliper's doubt from the ends of a range of about two standard deviations each way */
const doubtOf = (q: { low: number; high: number }, least: number) =>
  Math.min(2e-3, Math.max(least, (q.high - q.low) / 4))

function neckOf(t: Craft['tanks'][number], i: number): Neck[] {
  const n = t.neck
  if (!n) return []
  const path = `tanks.${i}.neck`
  return [
    {
      name: t.name,
      path,
      liquid: t.holds === 'water' ? 'water' : t.holds === 'diesel' ? 'petrol' : 'petrol and ethanol',
      reading: {
        side: n.thread === 'outside' ? 'external' : 'internal',
        across: n.overCrests.value,
        acrossDoubt: doubtOf(n.overCrests, 0.05e-3),
        span: n.span.value,
        pitches: n.pitches.value,
        spanDoubt: doubtOf(n.span, 0.1e-3),
        ...(n.flanks ? { flanks: n.flanks.value } : {}),
        worn: n.worn.value,
      },
      ...(n.furtherUp ? { further: n.furtherUp.value } : {}),
      ...(n.bore ? { bore: n.bore.value } : {}),
      printed: n.cap === 'printed',
      seal: ringAsked(n.ring, path),
    },
  ]
}

export function printsFromCraft(craft: Craft): PrintsInputs {
  return {
    printer: printerOf(craft),
    printerKnown: craft.printer !== undefined,
    necks: craft.tanks.flatMap(neckOf),
    hatches: craft.openings.flatMap((o, i): SealedHatch[] =>
      o.kind === 'hatch' && o.clear && (o.shut === 'screw lid' || o.ring)
        ? [
            {
              name: o.name,
              path: `openings.${i}`,
              clear: o.clear.value,
              screws: o.shut === 'screw lid',
              seal: ringAsked(o.ring, `openings.${i}`),
            },
          ]
        : [],
    ),
    reach: reachPlaces(craft),
  }
}
