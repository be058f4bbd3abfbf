/** One deck build looked at for a person's loads: what each part does, what its margin is, what it weighs. */
import { type Alloy, aluminium, strengthOf } from './alloys.ts'
import { type BeamSection, beamMiddleLoad, withSkin } from './beams.ts'
import { type Foam, foamAllowable } from './foams.ts'
import { type Patch, type Plate, patchOnPlate } from './loadedPlate.ts'
import { type FootLoad, footLoads } from './loads.ts'
import { bedStiffness } from './onFoam.ts'
import { setLoad } from './permanentSet.ts'
import { sandwichPanel, wrinklingStress } from './sandwich.ts'
import { type StrengthLimits, strengthLimits } from './strengthLimits.ts'

export type DeckSupport =
  /** sheet spanning the bay */
  | { kind: 'alone' }
  /** sheet on stringers along the bay, `spacing` apart, each spanning the bay's length */
  | { kind: 'stringers'; spacing: number; section: BeamSection }
  /** sheet lying on foam of a depth, the foam on something firm */
  | { kind: 'foam'; foam: Foam; depth: number }
  /** two sheets on a foam core */
  | { kind: 'sandwich'; foam: Foam; core: number; inner: number }

export interface DeckBay {
  name: string
  /** m, along and across, between frames */
  length: number
  width: number
  /** skin, m */
  t: number
  alloy: Alloy
  /** true when the strength that counts is beside a weld */
  welded: boolean
  /** true when the edges cannot pull in (welded all round), false when rivets or foam let them */
  held: boolean
  support: DeckSupport
}

interface DeckUnderLoad {
  load: FootLoad['name']
  /** N */
  force: number
  /** m, under the foot */
  deflection: number
  /** Pa in the skin, elastic, and its yield or part of it */
  stress: number
  allowed: number
  /** margin of the skin against a lasting dish, a broken sheet or wrinkles */
  skin: number
  /** Pa on the foam and what it may be; absent without foam */
  foam?: { pressure: number; allowed: number }
  /** Pa in a stringer; absent without */
  stringer?: { stress: number; allowed: number; ofSpan: number }
  /** sandwich: core shear and face wrinkling */
  core?: { stress: number; allowed: number }
  /** least of allowed over actual */
  margin: number
  /** what gives first */
  weakest: 'skin' | 'foam' | 'stringer' | 'core'
  /** N/m pulled at the edges, for rivets */
  edgePull: number
  /** linear bending alone would give this deflection, m: not to be believed above half a thickness */
  bendingOnly: number
}

/** What the answer takes from the table of limits. */
type DeckLimits = Pick<StrengthLimits, 'standingShare' | 'stepDish' | 'jumpDish'>

export interface DeckAnswer {
  bay: DeckBay
  loads: DeckUnderLoad[]
  /** least margin and its load */
  margin: number
  governs: DeckUnderLoad
  /** m, standing */
  deflection: number
  /** kg/m² with stringers, foam and inner face */
  massPerArea: number
  mass: number
}

/** Part of the strength that a load may use where what counts is stress, Pa: stringers, frames, faces of a core. */
function allowedStress(bay: DeckBay, limit: FootLoad['limit'], limits: DeckLimits): number {
  const s = strengthOf(bay.alloy, bay.welded)
  return limit === 'service' ? limits.standingShare.value * s.yield : limit === 'yield' ? s.yield : s.ultimate
}

/** moment that a row of rivets carries over that of the sheet; judgement, no source */
const rivetedFixity = 0.5

/** Load over that which leaves the sheet more of a dish than the load may, on supports `span` apart. */
function setMargin(bay: DeckBay, l: FootLoad, patch: Patch, span: number, limits: DeckLimits): number {
  const s = strengthOf(bay.alloy, bay.welded)
  const sheet = {
    span,
    t: bay.t,
    stress: l.limit === 'rupture' ? s.ultimate : s.yield,
    // sheet goes on over stringers and welds; at rivets it turns a little
    fixity: bay.held || bay.support.kind === 'stringers' ? 1 : rivetedFixity,
    held: bay.held,
  }
  const dish = l.limit === 'rupture' ? limits.jumpDish.value * bay.t : limits.stepDish.value
  const may = setLoad(sheet, patch.u * patch.v, dish)
  return ((l.limit === 'service' ? limits.standingShare.value : 1) * may) / patch.load
}

/** kg/m² of the build. */
export function deckMassPerArea(bay: DeckBay): number {
  const skin = bay.alloy.density * bay.t
  const s = bay.support
  if (s.kind === 'stringers') return skin + (bay.alloy.density * s.section.area) / s.spacing
  if (s.kind === 'foam') return skin + s.foam.density * s.depth
  // a thin glue line each side, 0.3 kg/m² (common practice, no source)
  if (s.kind === 'sandwich') return skin + bay.alloy.density * s.inner + s.foam.density * s.core + 0.6
  return skin
}

/** Looks at a bay for a rider of a mass (kg), foam at a temperature (K). RangeError on sizes that are not positive. */
export function deckBay(
  bay: DeckBay,
  mass: number,
  temperature = 293.15,
  terms = 59,
  limits: DeckLimits = strengthLimits,
): DeckAnswer {
  const asked = [mass, temperature, terms, limits]
  const known = answered.get(bay)
  if (known && asked.every((part, i) => part === known.asked[i])) return known.answer
  const answer = solvedBay(bay, mass, temperature, terms, limits)
  answered.set(bay, { asked, answer })
  return answer
}

/** the last answer of each bay: answer, headline and findings of one look ask alike */
const answered = new WeakMap<DeckBay, { asked: readonly unknown[]; answer: DeckAnswer }>()

function solvedBay(
  bay: DeckBay,
  mass: number,
  temperature: number,
  terms: number,
  limits: DeckLimits,
): DeckAnswer {
  const loads = footLoads(mass).map((l) => underLoad(bay, l, temperature, terms, limits))
  const governs = loads.reduce((a, b) => (b.margin < a.margin ? b : a))
  const massPerArea = deckMassPerArea(bay)
  return {
    bay,
    loads,
    margin: governs.margin,
    governs,
    deflection: loads[0]!.deflection,
    massPerArea,
    mass: massPerArea * bay.length * bay.width,
  }
}

function underLoad(
  bay: DeckBay,
  l: FootLoad,
  temperature: number,
  terms: number,
  limits: DeckLimits,
): DeckUnderLoad {
  const allowed = allowedStress(bay, l.limit, limits)
  return bay.support.kind === 'sandwich'
    ? sandwichUnder(bay, l, allowed, temperature, terms)
    : sheetUnder(bay, l, allowed, temperature, terms, limits)
}

/** Standing comes again and again; a step or a jump is rare and short. */
const foamUse = (l: FootLoad): 'foot' | 'jump' => (l.name === 'standing' ? 'foot' : 'jump')

/** The patch turned and trimmed to fit a bay: a foot wider than the bay stands on its edges with the rest. */
function fitted(l: FootLoad, a: number, b: number): Patch {
  const long = Math.max(l.u, l.v)
  const short = Math.min(l.u, l.v)
  const [u, v] = a >= b ? [long, short] : [short, long]
  const trimmed = { u: Math.min(u, a), v: Math.min(v, b) }
  return { load: (l.load * trimmed.u * trimmed.v) / (u * v), ...trimmed }
}

function sheetUnder(
  bay: DeckBay,
  l: FootLoad,
  allowed: number,
  temperature: number,
  terms: number,
  limits: DeckLimits,
): DeckUnderLoad {
  const s = bay.support
  const width = s.kind === 'stringers' ? Math.min(s.spacing, bay.width) : bay.width
  const plate: Plate = {
    a: bay.length,
    b: width,
    t: bay.t,
    modulus: aluminium.modulus,
    poisson: aluminium.poisson,
  }
  const bed = s.kind === 'foam' ? bedStiffness(s.foam.modulus, s.depth) : 0
  const patch = fitted(l, plate.a, plate.b)
  // edges that can pull in lie between bending alone and held: half of the difference is given to them
  const stiff = patchOnPlate(plate, patch, { held: true, bed, terms })
  const free = patchOnPlate(plate, patch, { held: false, bed, terms })
  const r = bay.held || stiff.deflection < 0.25 * bay.t ? stiff : between(stiff, free)
  // without a bed yield at one place is no dish; on one the sheet that stays elastic keeps none either
  const set = setMargin(bay, l, patch, Math.min(plate.a, plate.b), limits)
  const skin = bed > 0 ? Math.max(set, allowed / r.stress) : set
  const parts: { what: DeckUnderLoad['weakest']; margin: number }[] = [{ what: 'skin', margin: skin }]
  const out: Partial<DeckUnderLoad> = {}
  if (s.kind === 'foam') {
    const may = foamAllowable(s.foam, foamUse(l), temperature)
    const pressure = bed * r.deflection
    out.foam = { pressure, allowed: may }
    parts.push({ what: 'foam', margin: may / pressure })
  }
  if (s.kind === 'stringers') {
    const beam = beamMiddleLoad(
      withSkin(s.section, bay.t, Math.min(30 * bay.t, s.spacing)),
      bay.length,
      l.load,
      aluminium.modulus,
      0.3,
    )
    out.stringer = { stress: beam.stress, allowed, ofSpan: beam.ofSpan }
    parts.push({ what: 'stringer', margin: allowed / beam.stress })
    out.deflection = r.deflection + beam.deflection
  }
  const worst = parts.reduce((a, b) => (b.margin < a.margin ? b : a))
  return {
    load: l.name,
    force: l.load,
    deflection: r.deflection,
    stress: r.stress,
    allowed,
    skin,
    margin: worst.margin,
    weakest: worst.what,
    edgePull: r.tension,
    bendingOnly: free.deflection,
    ...out,
  }
}

interface SheetState {
  deflection: number
  stress: number
  tension: number
}

/** Edges that slip: half way between held and free tension, never softer than five thicknesses' worth of the held answer (judgement, no source). */
function between(held: SheetState, free: SheetState): SheetState {
  const deflection = Math.min((held.deflection + free.deflection) / 2, 1.6 * held.deflection)
  return {
    deflection,
    stress: Math.min((held.stress + free.stress) / 2, 1.3 * held.stress),
    tension: 0.6 * held.tension,
  }
}

function sandwichUnder(
  bay: DeckBay,
  l: FootLoad,
  allowed: number,
  temperature: number,
  terms: number,
): DeckUnderLoad {
  const s = bay.support as Extract<DeckSupport, { kind: 'sandwich' }>
  const face = Math.min(bay.t, s.inner)
  const sandwich = {
    face,
    core: s.core,
    faceModulus: aluminium.modulus,
    coreModulus: s.foam.modulus,
    coreShear: s.foam.shearModulus,
  }
  const patch = fitted(l, bay.length, bay.width)
  const panel = sandwichPanel(sandwich, bay.length, bay.width, patch, aluminium.poisson, terms)
  // the top face presses into the core under the foot: a sheet on a bed, over a square as wide as the sheet can spread it
  const bed = bedStiffness(s.foam.modulus, s.core)
  const side = Math.max(0.3, 3 * Math.max(patch.u, patch.v))
  const local = patchOnPlate(
    { a: side, b: side, t: bay.t, modulus: aluminium.modulus, poisson: aluminium.poisson },
    { load: patch.load, u: patch.u, v: patch.v },
    { held: false, bed, terms },
  )
  const may = foamAllowable(s.foam, foamUse(l), temperature)
  const pressure = bed * local.deflection
  const stress = panel.faceStress + local.bending
  const skinAllowed = Math.min(allowed, wrinklingStress(sandwich))
  const shearAllowed = (l.name === 'standing' ? 0.5 : 0.8) * s.foam.shearStrength
  const parts: { what: DeckUnderLoad['weakest']; margin: number }[] = [
    { what: 'skin', margin: Math.min(allowed / stress, skinAllowed / panel.faceStress) },
    { what: 'foam', margin: may / pressure },
    { what: 'core', margin: shearAllowed / panel.coreStress },
  ]
  const worst = parts.reduce((a, b) => (b.margin < a.margin ? b : a))
  return {
    load: l.name,
    force: l.load,
    deflection: panel.deflection + local.deflection,
    stress,
    allowed,
    skin: parts[0]!.margin,
    foam: { pressure, allowed: may },
    core: { stress: panel.coreStress, allowed: shearAllowed },
    margin: worst.margin,
    weakest: worst.what,
    edgePull: 0,
    bendingOnly: panel.deflection,
  }
}
