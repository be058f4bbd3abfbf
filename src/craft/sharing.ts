/** What engines have in common: a muffler and outlet that several pipes lead into, an air tube that several engines draw through. */
import { type Contradiction, shown } from './contradiction.ts'
import type { Craft } from './schema/craftSchema.ts'

type TwoStroke = Extract<Craft['engines'][number], { kind: 'two-stroke' }>
type Exhaust = NonNullable<TwoStroke['exhaust']>
type Engines = Pick<Craft, 'engines'>

/** What lies behind an engine's stinger, its own or another engine's. */
export interface PipeEnd {
  /** index of the engine whose box and outlet they are */
  owner: number
  muffler?: NonNullable<Exhaust['muffler']>
  outlet?: NonNullable<Exhaust['outlet']>
  /** indices of all engines whose pipes lead there, and how many of them run (one at least) */
  pipes: number[]
  running: number
}

/** Box and outlet behind an engine's pipe; undefined for an engine without an exhaust in the file. */
export function pipeEnd(craft: Engines, engine: number): PipeEnd | undefined {
  const own = exhaustOf(craft, engine)
  if (!own) return undefined
  const owner = ownerOf(craft, engine)
  const { muffler, outlet } = exhaustOf(craft, owner)!
  const pipes = craft.engines.flatMap((_, i) =>
    exhaustOf(craft, i) && ownerOf(craft, i) === owner ? [i] : [],
  )
  return {
    owner,
    pipes,
    running: runningOf(craft, pipes),
    ...(muffler ? { muffler } : {}),
    ...(outlet ? { outlet } : {}),
  }
}

/** The tube an engine draws its air through. */
export interface AirTube {
  /** index of the engine it is written under */
  owner: number
  tube: NonNullable<TwoStroke['snorkel']>
  engines: number[]
  /** how many of them run, one at least */
  running: number
}

/** Undefined for an engine that draws from where it stands. */
export function airTube(craft: Engines, engine: number): AirTube | undefined {
  const owner = breathesThrough(craft, engine)
  const tube = snorkelOf(craft, owner)
  if (!tube) return undefined
  const engines = craft.engines.flatMap((_, i) => (breathesThrough(craft, i) === owner ? [i] : []))
  return { owner, tube, engines, running: runningOf(craft, engines) }
}

const exhaustOf = ({ engines }: Engines, i: number): Exhaust | undefined => {
  const e = engines[i]
  return e?.kind === 'two-stroke' ? e.exhaust : undefined
}
const snorkelOf = ({ engines }: Engines, i: number) => {
  const e = engines[i]
  return e && 'snorkel' in e ? e.snorkel : undefined
}

const runningOf = (craft: Engines, list: readonly number[]) =>
  Math.max(1, list.filter((i) => craft.engines[i]!.running).length)

/** numbers in the file count from one; one that leads nowhere counts as its own (and is told as a contradiction) */
function ownerOf(craft: Engines, i: number): number {
  const to = exhaustOf(craft, i)?.leadsInto
  return to && exhaustOf(craft, to.value - 1) ? to.value - 1 : i
}
function breathesThrough({ engines }: Engines, i: number): number {
  const e = engines[i]
  const to = e && 'breathesThrough' in e ? e.breathesThrough : undefined
  return to && snorkelOf({ engines }, to.value - 1) ? to.value - 1 : i
}

/** Engines that are said to share what is not there, or what they have themselves. */
export function inSharing(craft: Engines): Contradiction[] {
  return craft.engines.flatMap((e, i): Contradiction[] => {
    const found: Contradiction[] = []
    const exhaust = exhaustOf(craft, i)
    const into = exhaust?.leadsInto
    if (into) {
      const there = exhaustOf(craft, into.value - 1)
      const wrong =
        into.value - 1 === i || !there || there.leadsInto
          ? 'the number of another engine, from 1, that has an exhaust with an end of its own'
          : exhaust.muffler || exhaust.outlet
            ? `no muffler or outlet of its own beside it, as its pipe leads into that of engine ${into.value}`
            : undefined
      if (wrong) found.push({ path: into.path, found: shown(into, ''), expected: wrong, severity: 'error' })
    }
    const through = 'breathesThrough' in e ? e.breathesThrough : undefined
    if (through) {
      const there = snorkelOf(craft, through.value - 1)
      const wrong =
        through.value - 1 === i || !there
          ? 'the number of another engine, from 1, that has an air intake'
          : snorkelOf(craft, i)
            ? `no air intake of its own beside it, as it draws through that of engine ${through.value}`
            : undefined
      if (wrong)
        found.push({ path: through.path, found: shown(through, ''), expected: wrong, severity: 'error' })
    }
    return found
  })
}
