/** The craft file to its shop sketch. */
import type { Craft } from '../craft/index.ts'
import { type CraftShape, craftSketch, type SketchPart } from '../drawing/craftSketch.ts'
import type { Sheet } from '../drawing/sheet.ts'
import { hullFromCraft, hullSpecFromCraft, weightsOf } from '../hull/fromCraft.ts'
import { floatAtRest, stationsOf } from '../hull/resistance/form.ts'
import { inLook, type Look, metricLook, plain } from './shown.ts'

/** Mean density, kg/m³, of a box round a machine or a tank, to draw one whose size the file does not give; judgement. */
const boxDensity = { engine: 900, tank: 600, box: 500, weight: 500 } as const

/** The picture of a craft with its dimensions, floating at rest where it can be worked out. */
export function craftPicture(craft: Craft, look: Look = metricLook): Sheet {
  return craftSketch(shapeOf(craft, look), look.width)
}

function shapeOf(craft: Craft, look: Look): CraftShape {
  const spec = hullSpecFromCraft(craft)
  const { hull, jet, rider } = craft
  const s = stationsOf(spec)
  const pairs = (a: ArrayLike<number>, b: ArrayLike<number>) => Array.from(a).flatMap((v, i) => [v, b[i]!])
  const flare = hull.beam.value / hull.chineBeam.value
  const deckHalf = s.half.map((h) => h * flare)
  const section = (i: number) => [0, s.keel[i]!, s.half[i]!, s.chine[i]!, deckHalf[i]!, s.deck[i]!]
  const widest = s.half.reduce((best, h, i) => (h > s.half[best]! ? i : best), 0)
  const water = restingWater(craft)
  const words = (metres: number) =>
    `${plain(inLook(metres, 'length', look), look.length === 'mm' ? 0 : 1)} ${look.length}`
  const shape: CraftShape = {
    title: `${craft.name}, to scale`,
    says: `${craft.name} from the side, from above and from astern: ${words(spec.length)} long, ${words(hull.beam.value)} wide, ${words(spec.depth)} deep${water ? `, drawing ${words(water.aft)} at the transom` : ''}.`,
    length: spec.length,
    beam: hull.beam.value,
    depth: spec.depth,
    keel: pairs(s.x, s.keel),
    chine: pairs(s.x, s.chine),
    deck: pairs(s.x, s.deck),
    chineHalf: pairs(s.x, s.half),
    deckHalf: pairs(s.x, deckHalf),
    widest: section(widest),
    transom: section(0),
    parts: craft.weights.map(partOf),
    rider: {
      at: rider.position.value,
      off: rider.offCentre.value,
      stature: rider.height.value,
      posture: rider.stance,
    },
    jet: {
      bore: jet.rotor.bore.value,
      nozzle: jet.nozzle.bore.value,
      height: (water?.aft ?? 0) + jet.nozzle.height.value,
      intakeFront: jet.intake.front.value,
      intakeLength: jet.intake.length.value,
      intakeWidth: jet.intake.width.value,
      rotorAt: Math.max(0.08, jet.intake.front.value - jet.duct.length.value),
    },
    words,
  }
  return water ? { ...shape, water } : shape
}

/** Still water above the transom's foot, at the transom and at the nose; nothing when the craft does not float. */
function restingWater(craft: Craft): CraftShape['water'] {
  if (!(weightsOf(craft).mass > 0)) return undefined
  const { spec, loading, conditions, riderAt } = hullFromCraft(craft)
  const mass = loading.mass + loading.riderMass
  const rest = floatAtRest(
    spec,
    mass,
    (loading.mass * loading.x + loading.riderMass * riderAt) / mass,
    (loading.mass * loading.z + loading.riderMass * loading.riderHeight) / mass,
    conditions.density,
  )
  if (!rest.converged) return undefined
  const aft = rest.value.waterAtTransom
  return { aft, forward: aft - spec.length * Math.tan(rest.value.trim) }
}

function partOf(w: Craft['weights'][number]): SketchPart {
  const name = w.name.toLowerCase()
  const look = /engine|motor/.test(name)
    ? 'engine'
    : /tank|fuel/.test(name)
      ? 'tank'
      : /hull|deck|foam|jet|shaft|impeller/.test(name)
        ? 'weight'
        : 'box'
  const side = Math.cbrt(w.mass.value / boxDensity[look])
  const guessed = [side * 1.25, side, side * 0.8] as const
  const size = w.size ? (w.size.map((q) => q.value) as [number, number, number]) : guessed
  return {
    name: w.name,
    at: w.at.map((q) => q.value) as [number, number, number],
    size,
    sizeGuessed: w.size === undefined,
    look,
  }
}
