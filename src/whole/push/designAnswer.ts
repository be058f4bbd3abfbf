/** What to fit: the search's places turned into options, each solved again with the whole balance and held against what is fitted. */
import type { Gain } from '../../base/answers/decision.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { changesFor, type Design, designOfCraft, fileChanges, reachOf, rounded } from './design.ts'
import { none, type OnDraws, onDraws, spread } from './designDraws.ts'
import { fittedMerit, type Place, placeOfLine, placesOf } from './designPlaces.ts'
import {
  bestOf,
  curveOf,
  type Drawn,
  drawDesigns,
  type Line,
  pitched,
  type Searched,
  searchAll,
  searchFitted,
  type TryDesigns,
  topOf,
} from './designSearch.ts'
import { DesignTrials, type Tried } from './designTrials.ts'
import type { DesignAnswer, DesignOption, Does, PitchBand, PitchLine } from './designTypes.ts'
import { optionSays } from './designWords.ts'
import { wantsOf } from './merit.ts'
import { probe } from './probe.ts'

export interface DesignWork {
  solved?: SolvedCurves
  /** kept between searches: maps of what is confirmed */
  maps?: MapStore
  /** joint draws; usual when left out */
  draws?: number
  progress?: (part: number, says: string) => void
  /** answers on the way: the best so far, for whoever calls off */
  early?: (answer: DesignAnswer) => void
  /** throw here to end the search between two steps */
  check?: () => void
  /** works requests out in several threads; default: one after the other here */
  tryMany?: TryDesigns
}

const usualDraws = 24

/** Searches the craft. Throws NotBalanced when an engine has no torque curve. */
export async function designAnswer(craft: Craft, work: DesignWork = {}): Promise<DesignAnswer> {
  const { solved } = work
  const trials = new DesignTrials(craft, solved)
  const here: TryDesigns = async (requests) => requests.map((r) => trials.run(r))
  const tryMany = work.tryMany ?? here
  const maps = work.maps ?? new MapStore()
  const tell = (part: number, says: string) => {
    work.check?.()
    work.progress?.(part, says)
  }
  const confirm = confirming(craft, maps, solved)
  tell(0, 'Every pitch of these blades')
  const first = await searchFitted(craft, here)
  work.early?.(assemble(craft, first, undefined, confirm))
  tell(0.1, 'Blades, nozzles and pitches on the craft as written')
  const all = await searchAll(craft, first, tryMany)
  const early = assemble(craft, all, undefined, confirm)
  work.early?.(early)
  tell(0.3, 'The best of them, whatever engines and hull turn out to be')
  const drawn = await drawDesigns(
    linesWorthDrawing(craft, all.lines),
    singlesOf(craft, all.lines).map((s) => s.design),
    work.draws ?? usualDraws,
    tryMany,
  )
  tell(0.95, 'What is offered, with the whole balance')
  return assemble(craft, all, drawn, confirm)
}

type Confirm = (values: Readonly<Record<string, number>>) => {
  pull: number
  topSpeed: number
  rotation: number
}

/** The whole balance with values put in, on the craft as written. */
function confirming(craft: Craft, maps: MapStore, solved?: SolvedCurves): Confirm {
  const known = new Map<string, ReturnType<Confirm>>()
  return (values) => {
    const key = JSON.stringify(values)
    let sums = known.get(key)
    if (!sums) {
      const { pull, topSpeed, rotation } = probe(modelFromCraft(whatIf(craft, values), maps, {}, solved))
      // engines that cannot turn the impeller give no pull and no speed
      sums = pull > 0 ? { pull, topSpeed, rotation } : { pull: 0, topSpeed: 0, rotation: Number.NaN }
      known.set(key, sums)
    }
    return sums
  }
}

const kindOf = (d: Design) => `${d.blades} ${d.ratio} ${d.bore}`
const sameKind = (a: Design, b: Design) => kindOf(a) === kindOf(b) && a.nozzle === b.nozzle

/** What is fitted with every blade number, and the best line of the three best kinds. */
function linesWorthDrawing(craft: Craft, lines: readonly Line[]): Line[] {
  const now = designOfCraft(craft)
  const fitted = lines.filter((l) => sameKind({ ...l.design, blades: now.blades }, now))
  const ranked = [...lines].sort((a, b) => bestOf(b).merit - bestOf(a).merit)
  const kinds = new Map<string, Line>()
  for (const line of ranked)
    if (kinds.size < 3 && !kinds.has(kindOf(line.design))) kinds.set(kindOf(line.design), line)
  return [...new Set([...fitted, ...kinds.values()])]
}

interface Single {
  id: DesignOption['id'] | 'now'
  design: Design
}

/** Designs that leave the impeller as it is: now, a blade fewer, another nozzle, another ratio. */
function singlesOf(craft: Craft, lines: readonly Line[]): Single[] {
  const now = designOfCraft(craft)
  const singles: Single[] = [{ id: 'now', design: now }]
  if (now.blades > 2) singles.push({ id: 'blade-cut', design: { ...now, blades: now.blades - 1 } })
  const along = (id: Single['id'], pick: 'nozzle' | 'ratio') => {
    const over = lines
      .filter((l) => sameKind({ ...l.design, [pick]: now[pick] }, now))
      .map((l) => ({ at: l.design[pick], merit: curveOf(l.pitches, l.tried, (t) => t.merit)(now.pitch) }))
      .sort((a, b) => a.at - b.at)
    if (over.length < 3) return
    const merit = curveOf(
      over.map((o) => o.at),
      over.map((o) => ({ merit: o.merit }) as Tried),
      (t) => t.merit,
    )
    const best = rounded({
      ...now,
      [pick]: topOf(
        over.map((o) => o.at),
        merit,
      ).pitch,
    })
    const design = { ...now, [pick]: best[pick] }
    if (Math.abs(design[pick] / now[pick] - 1) > 0.01) singles.push({ id, design })
  }
  along('nozzle', 'nozzle')
  if (reachOf(craft).ratio) along('ratio', 'ratio')
  return singles
}

function doesOf(sums: ReturnType<Confirm>, draws: OnDraws): Does {
  return {
    pull: spread(sums.pull, draws.pull),
    topSpeed: spread(sums.topSpeed, draws.topSpeed),
    rotation: spread(sums.rotation, draws.rotation),
    draws: { pull: draws.pull, topSpeed: draws.topSpeed },
  }
}

const steps = (then: readonly number[], now: readonly number[]) => then.map((x, k) => x - now[k]!)

function gainOf(then: Does, now: Does): Gain | undefined {
  const topSpeed = then.topSpeed.value - now.topSpeed.value
  if (!Number.isFinite(topSpeed)) return undefined
  return {
    pull: spread(then.pull.value - now.pull.value, steps(then.draws.pull, now.draws.pull)),
    topSpeed: spread(topSpeed, steps(then.draws.topSpeed, now.draws.topSpeed)),
  }
}

/** least worth of an option that is offered, over all draws and on the craft as written */
const worthOffering = 0.01

/** Everything so far as an answer; without draws every range is a point. */
function assemble(craft: Craft, found: Searched, drawn: Drawn | undefined, confirm: Confirm): DesignAnswer {
  const wants = wantsOf(craft)
  const start = designOfCraft(craft)
  const singles = singlesOf(craft, found.lines)
  const single = (i: number) => (drawn?.singles[i] ? onDraws(drawn.singles[i]!.tried) : none)
  const now = { ...doesOf(confirm({}), single(0)), design: start }
  const nowMerit = {
    drawn: single(0).merit,
    written: fittedMerit(found.lines, start),
  }
  const options: DesignOption[] = []
  const add = (id: DesignOption['id'], design: Design, draws: OnDraws, written: number, band?: PitchBand) => {
    const values = changesFor(craft, design)
    if (Object.keys(values).length === 0) return
    const does = doesOf(confirm(values), draws)
    const gain = gainOf(does, now)
    const worth = worthOf(draws.merit, nowMerit.drawn, written, nowMerit.written)
    const lower = does.pull.value < now.pull.value && !(does.topSpeed.value >= now.topSpeed.value)
    const better = written > (1 + worthOffering) * nowMerit.written && worth > worthOffering
    options.push({
      id,
      says: optionSays(id, start, design),
      design,
      values,
      changes: fileChanges(craft, values),
      ...does,
      ...(gain ? { gain } : {}),
      worth,
      offered: better && !lower && does.pull.value > 0,
      ...(band ? { band } : {}),
    })
  }
  const places = drawn ? placesOf(drawn) : found.lines.filter((l) => bestOf(l).merit > 0).map(placeOfLine)
  const written = (design: Design) => fittedMerit(found.lines, design)
  const isFitted = (d: Design) => sameKind(d, start)
  const atFitted = places.filter((p) => sameKind({ ...p.design, blades: start.blades }, start))
  const fitted = atFitted.find((p) => isFitted(p.design))
  const offer = (id: DesignOption['id'], place: Place) => {
    const design = isFitted(place.design)
      ? pitched(start, rounded(place.design).pitch)
      : sameKind({ ...place.design, blades: start.blades }, start)
        ? { ...start, blades: place.design.blades, pitch: rounded(place.design).pitch }
        : keptWhere(start, rounded(place.design))
    add(id, design, place.at(design.pitch), written(pitched(place.design, design.pitch)), place.band)
  }
  if (fitted) offer('pitch', fitted)
  for (const p of atFitted) if (p !== fitted) offer('blades', p)
  const best = places.reduce<Place | undefined>((a, b) => (a && a.merit >= b.merit ? a : b), undefined)
  if (best && !atFitted.includes(best)) offer('together', best)
  singles.forEach(({ id, design }, i) => {
    if (id !== 'now') add(id, design, single(i), fittedMerit(found.lines, design))
  })
  options.sort((a, b) => b.worth - a.worth)
  return {
    final: drawn !== undefined,
    wants,
    balances: found.balances + (drawn?.balances ?? 0),
    draws: drawn?.draws ?? 0,
    now,
    options,
    fitted: fitted?.band,
    lines: pitchLines(found.lines, start),
  }
}

/** sizes that hardly differ from what is fitted stay as they are */
function keptWhere(now: Design, to: Design): Design {
  const keep = (pick: keyof Design) => (Math.abs(to[pick] / now[pick] - 1) < 0.012 ? now[pick] : to[pick])
  return {
    pitch: to.pitch,
    blades: to.blades,
    nozzle: keep('nozzle'),
    ratio: keep('ratio'),
    bore: keep('bore'),
  }
}

/** Mean of the gain in merit over the draws, or on the craft as written while there are none. */
function worthOf(
  then: readonly number[],
  now: readonly number[],
  written: number,
  writtenNow: number,
): number {
  const part = (a: number, b: number) => Math.log(Math.max(a, 1e-4) / Math.max(b, 1e-4))
  if (then.length === 0) return Math.expm1(part(written, writtenNow))
  const sum = then.reduce((s, m, k) => s + part(m, now[k]!), 0)
  return Math.expm1(sum / then.length)
}

/** pitches a line is drawn at */
const drawnAt = 48

/** Pull and speed over pitch with the nozzle that is fitted, one line a blade number. */
function pitchLines(lines: readonly Line[], now: Design): PitchLine[] {
  return lines
    .filter((l) => sameKind({ ...l.design, blades: now.blades }, now) && bestOf(l).merit > 0)
    .sort((a, b) => a.design.blades - b.design.blades)
    .map((l) => {
      const from = l.pitches[0]!
      const span = l.pitches.at(-1)! - from
      const pitch = Array.from({ length: drawnAt + 1 }, (_, i) => from + (span * i) / drawnAt)
      return {
        blades: l.design.blades,
        nozzle: l.design.nozzle,
        pitch,
        pull: pitch.map(curveOf(l.pitches, l.tried, (t) => t.pull)),
        topSpeed: pitch.map(curveOf(l.pitches, l.tried, (t) => t.topSpeed)),
      }
    })
}
