/** What strength has to say about a craft's deck and foam: bay by bay, edges, pops in the sun, heat, a lighter deck. */
import type { Because, Finding, Standing } from '../answers/finding.ts'
import type { Craft } from '../craft/schema/index.ts'
import { camberFor, oilCanStepRectangle } from './buckling.ts'
import { type DeckAnswer, type DeckBay, deckBay } from './deck.ts'
import { foams } from './foams.ts'
import { type HotPart, type StrengthInputs, strengthFromCraft } from './fromCraft.ts'
import { distanceFor, foamFace, shieldedFoamFace, wrapSurface } from './heat.ts'
import { lightestDeck } from './lightest.ts'
import { pitchLimits, rivetAllowable, rivetOf } from './rivets.ts'

const plates = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959)'
const berger = 'H. M. Berger, J. Appl. Mech. 22 (1955): large deflection'
const foamTables = 'ASTM C578 and D6817: least strengths of foam'
const factors = 'Step twice, jump four times the rider’s weight: common practice, no source'

const mm = (x: number): string => `${(1e3 * x).toFixed(1)} mm`
const MPa = (p: number): string => `${Math.round(p / 1e6)} MPa`
const kPa = (p: number): string => `${Math.round(p / 1e3)} kPa`
const celsius = (T: number): string => `${Math.round(T - 273.15)} °C`

/** Findings of the question "strength" about deck and foam. */
export function strengthFindings(craft: Craft): Finding[] {
  return strengthFindingsOf(strengthFromCraft(craft))
}

/** The same from plain inputs. */
export function strengthFindingsOf(inputs: StrengthInputs): Finding[] {
  const answers = inputs.bays.map((b) => deckBay(b, inputs.rider))
  return [
    ...(answers.length === 0 ? [noBays()] : answers.map((a, i) => bayFinding(a, i, inputs))),
    ...edges(answers, inputs),
    ...pops(inputs.bays),
    ...lighter(answers, inputs),
    ...inputs.hot.map((h, i) => heat(h, i)),
  ]
}

function noBays(): Finding {
  return {
    id: 'deck.none',
    question: 'strength',
    says: 'Whether the deck holds is not known: the file names no bay of it.',
    standing: 'unknown',
    because: [{ says: 'no bays in the file', link: 'deck.bays' }],
    measureNext: {
      what: 'measure the field of deck you stand on, its sheet, and what holds it up',
      with: 'tape and caliper',
      minutes: 10,
      path: 'deck.bays',
    },
    sources: ['The craft file'],
  }
}

const loadWord = { standing: 'standing still', step: 'a hard step', jump: 'a jump with both feet' } as const
const partWord = {
  skin: 'the sheet',
  foam: 'the foam',
  stringer: 'the stringers',
  core: 'the core in shear',
} as const

function bayFinding(a: DeckAnswer, i: number, inputs: StrengthInputs): Finding {
  const g = a.governs
  const heavy = deckBay(a.bay, inputs.riderHigh)
  const stand = a.loads[0]!
  const soft = stand.deflection > Math.min(a.bay.length, a.bay.width) / 50
  const standing: Standing =
    a.margin >= 1 ? (soft ? 'watch' : 'good') : g.load === 'jump' && a.margin < 1 ? 'stop' : 'watch'
  const dish = g.load === 'step' && g.weakest === 'skin' ? ' and takes a lasting dish' : ''
  const says =
    a.margin >= 1
      ? `${a.bay.name}: holds, ${a.margin.toFixed(1)} times what ${loadWord[g.load]} asks of ${partWord[g.weakest]}; it gives ${mm(stand.deflection)} underfoot.`
      : `${a.bay.name}: ${loadWord[g.load]} asks ${(1 / a.margin).toFixed(1)} times what ${partWord[g.weakest]} bears${dish}; it gives ${mm(stand.deflection)} underfoot.`
  const because: Because[] = [
    {
      says: `${loadWord[g.load]}: ${Math.round(g.force)} N, ${MPa(g.stress)} in the sheet of ${MPa(g.allowed)} it may have`,
      link: `deck.bays.${i}.skin`,
    },
    ...(g.foam
      ? [
          {
            says: `${kPa(g.foam.pressure)} on the foam of ${kPa(g.foam.allowed)} it may have`,
            link: `deck.bays.${i}.foam`,
          },
        ]
      : []),
    ...(g.stringer
      ? [
          {
            says: `${MPa(g.stringer.stress)} in the stringers, which give 1/${Math.round(1 / g.stringer.ofSpan)} of their span`,
          },
        ]
      : []),
    ...(g.core ? [{ says: `${kPa(g.core.stress)} shear in the core of ${kPa(g.core.allowed)}` }] : []),
    { says: `${a.massPerArea.toFixed(1)} kg/m², ${a.mass.toFixed(2)} kg for the bay` },
  ]
  if (a.bay.support.kind === 'alone' && stand.bendingOnly > a.bay.t / 2)
    because.push({
      says: `bending alone would say ${mm(stand.bendingOnly)}: not to be believed above half the sheet’s thickness, the sheet hangs like a net instead`,
    })
  return {
    id: `deck.bay.${i}`,
    question: 'strength',
    says,
    value: a.margin,
    low: Math.min(a.margin, heavy.margin) * 0.8,
    high: a.margin * 1.2,
    unit: '1',
    standing,
    because,
    sources: [plates, berger, ...(g.foam ? [foamTables] : []), factors],
  }
}

/** Pull of the hanging sheet against its rivets. */
function edges(answers: readonly DeckAnswer[], inputs: StrengthInputs): Finding[] {
  if (inputs.joined !== 'riveted' || answers.length === 0) return []
  const worst = answers
    .map((a) => ({ a, pull: Math.max(...a.loads.filter((l) => l.load !== 'jump').map((l) => l.edgePull)) }))
    .reduce((x, y) => (y.pull > x.pull ? y : x))
  if (!(worst.pull > 0)) return []
  const rivet = rivetNear(inputs.rivet.diameter)
  const carries = rivetAllowable(rivet, worst.a.bay.alloy.ultimate, worst.a.bay.t) / inputs.rivet.pitch
  const limits = pitchLimits(rivet.diameter)
  const tight = inputs.rivet.pitch <= limits.widest
  const margin = carries / worst.pull
  return [
    {
      id: 'deck.rivets',
      question: 'strength',
      says: `The sheet of ${worst.a.bay.name} pulls ${(worst.pull / 1e3).toFixed(0)} N/mm on its edge under a step; rivets every ${mm(inputs.rivet.pitch)} carry ${(carries / 1e3).toFixed(0)}${margin < 1 ? ', so they slip and the edge works loose in time' : ''}${tight ? '' : `, and seal poorly beyond ${mm(limits.widest)}`}.`,
      value: margin,
      unit: '1',
      standing: margin >= 1 && tight ? 'good' : 'watch',
      because: [
        {
          says: `rivets of ${mm(rivet.diameter)}: half their breaking shear, or the sheet’s bearing, whichever is less`,
          link: 'deck.rivet size',
        },
        {
          says: `sealed seams want at most six diameters, ${mm(limits.widest)}; two diameters from an edge`,
          link: 'deck.rivet pitch',
        },
        { says: 'foam or stringers under the feet take this pull away' },
      ],
      sources: ['IFI-114 grade 10 blind rivets, from memory, ±15 %', 'FAA AC 43.13-1B, from memory', berger],
    },
  ]
}

function rivetNear(diameter: number) {
  const sizes = [3.2e-3, 4e-3, 4.8e-3]
  return rivetOf(sizes.reduce((a, b) => (Math.abs(b - diameter) < Math.abs(a - diameter) ? b : a)))
}

/** Flat sheet that pops in the sun. */
function pops(bays: readonly DeckBay[]): Finding[] {
  const flat = bays.filter((b) => b.support.kind === 'alone' || b.support.kind === 'stringers')
  if (flat.length === 0) return []
  const step = (b: DeckBay) =>
    oilCanStepRectangle(
      b.t,
      b.length,
      b.support.kind === 'stringers' ? Math.min(b.support.spacing, b.width) : b.width,
    )
  const worst = flat.reduce((a, b) => (step(b) < step(a) ? b : a))
  const rise = step(worst)
  return [
    {
      id: 'deck.pops',
      question: 'strength',
      says: `Held flat, the sheet of ${worst.name} pops once it is ${rise.toFixed(rise < 10 ? 1 : 0)} K warmer than its frame; a camber of ${mm(camberFor(worst.width))} or foam glued under it stops that.`,
      value: rise,
      unit: 'K',
      standing: rise < 25 ? 'watch' : 'good',
      because: [
        { says: 'aluminium in the sun runs 20 to 30 K above the air (common practice, no source)' },
        { says: 'rivets that slip let it breathe and put this off' },
      ],
      sources: ['S. Timoshenko and J. Gere, Theory of Elastic Stability (1961), § 9.2'],
    },
  ]
}

/** A lighter build for the bay that weighs most, if there is one. */
function lighter(answers: readonly DeckAnswer[], inputs: StrengthInputs): Finding[] {
  const worst = answers.reduce<DeckAnswer | undefined>(
    (a, b) => (a === undefined || b.mass > a.mass ? b : a),
    undefined,
  )
  if (worst === undefined) return []
  const { bay } = worst
  const depth = bay.support.kind === 'foam' ? bay.support.depth : 0.1
  const found = lightestDeck({
    length: bay.length,
    width: bay.width,
    rider: inputs.rider,
    alloy: bay.alloy,
    welded: bay.welded,
    held: bay.held,
    foams: foams.filter((f) => ['EPS 22', 'EPS 29', 'XPS 25', 'XPS 29', 'XPS 35'].includes(f.id)),
    foamDepth: depth,
  })
  const best = found.holding[0]
  if (best === undefined || (best.massPerArea > 0.97 * worst.massPerArea && worst.margin >= 1)) return []
  return [
    {
      id: 'deck.lighter',
      question: 'strength',
      says:
        worst.margin >= 1
          ? `${bay.name} could be lighter: ${best.bay.name} holds at ${best.massPerArea.toFixed(1)} kg/m² against ${worst.massPerArea.toFixed(1)} now.`
          : `The lightest build found that holds ${bay.name}: ${best.bay.name}, ${best.massPerArea.toFixed(1)} kg/m².`,
      value: best.massPerArea,
      unit: 'kg/m²',
      standing: 'good',
      because: found.compared.map((c) => ({
        says: `${c.bay.name}: ${c.massPerArea.toFixed(1)} kg/m², ${mm(c.deflection)} underfoot, ${c.margin >= 1 ? 'holds' : `${(1 / c.margin).toFixed(1)} times too much on ${partWord[c.governs.weakest]}`}`,
      })),
      sources: [plates, 'H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969)', foamTables],
    },
  ]
}

/** A hot part and the foam next to it, standing still after a run. */
function heat(h: HotPart, i: number): Finding {
  if (h.spot.distance <= h.spot.radius) return foamInside(h, i)
  const limit = h.foam.hottest - 10
  const at = (pipe: number) => faceOf({ ...h, spot: { ...h.spot, pipe } })
  const face = at(h.spot.pipe)
  const [low, high] = [at(h.low), at(h.high)]
  const clear = distanceFor(h.spot, limit)
  const standing: Standing = !Number.isFinite(face)
    ? 'unknown'
    : face > h.foam.hottest
      ? 'stop'
      : high > limit
        ? 'watch'
        : 'good'
  const guard = h.guard === 'bare' ? 'bare' : h.guard === 'shield' ? 'behind one bright shield' : 'wrapped'
  const says = `${h.name}: the foam beside it reaches ${celsius(face)} with the part ${guard} at ${celsius(h.spot.pipe)}; ${h.foam.id} wants at most ${celsius(limit)}.`
  return {
    id: `heat.${i}`,
    question: 'strength',
    says,
    value: face,
    low,
    high,
    unit: 'K',
    standing,
    because: [
      { says: `${mm(h.spot.distance)} from its middle to the foam`, link: `hot parts.${i}.distance` },
      clear.converged
        ? { says: `bare it would need ${mm(clear.value)}` }
        : { says: 'bare, no distance inside a hull would do' },
      { says: 'still air after a hard run: the worst minutes come after the engine stops' },
      ...shieldWords(h, limit, i),
      {
        says: 'Caution: polystyrene softens, burns and gives off poisonous smoke; petrol dissolves it. Keep an extinguisher at hand for the first runs',
      },
    ],
    measureNext: {
      what: 'hold a thermometer or heat-marking crayon to the foam face a few minutes after a hard run',
      with: 'thermometer',
      minutes: 10,
      path: `hot parts.${i}.temperature`,
    },
    sources: [
      'Radiation of a long cylinder on a small face, view factor r/s; Stefan-Boltzmann constant, CODATA 2018',
      'Data sheets: EPS and XPS 74 to 75 °C for long',
    ],
  }
}

function foamInside(h: HotPart, i: number): Finding {
  return {
    id: `heat.${i}`,
    question: 'strength',
    says: `${h.name}: how hot its foam gets is not known, as the file puts the foam inside the part: ${mm(h.spot.distance)} from its middle, where its skin is at ${mm(h.spot.radius)}.`,
    standing: 'unknown',
    because: [
      {
        says: 'the distance runs from the middle of the part to the face of the foam',
        link: `hot parts.${i}.distance`,
      },
    ],
    sources: ['The craft file'],
  }
}

/** What a bright plate would do for a bare part, or a missing margin. */
function shieldWords(h: HotPart, limit: number, i: number): Because[] {
  if (h.guard === 'shield') return []
  const behind = faceOf({ ...h, guard: 'shield' })
  if (!Number.isFinite(behind)) return []
  const enough =
    behind <= limit ? 'one is enough' : 'one is not enough: move the foam away or blow air between'
  return [
    {
      says: `behind one bright plate with air on both sides the foam would reach ${celsius(behind)}; ${enough}`,
      link: `hot parts.${i}.guard`,
    },
  ]
}

function faceOf(h: HotPart): number {
  if (h.guard === 'shield') {
    const s = shieldedFoamFace(h.spot, { emissivity: 0.15, film: 8 })
    return s.converged ? s.value.foam : Number.NaN
  }
  if (h.guard === 'wrap') {
    // two turns of glass tape, about 5 mm, 0.08 W/(m·K)
    const outside = Math.min(h.spot.radius + 0.005, 0.98 * h.spot.distance)
    const skin = wrapSurface(h.spot.pipe, h.spot.air, h.spot.radius, outside, 0.08, h.spot.film)
    if (!skin.converged) return Number.NaN
    const f = foamFace({ ...h.spot, radius: outside, pipe: skin.value, emissivity: 0.9 })
    return f.converged ? f.value : Number.NaN
  }
  const f = foamFace(h.spot)
  return f.converged ? f.value : Number.NaN
}
