/** Handbook questions of sheet, foam and sandwich under load. */
import { gigapascals, kPa, plainRatio } from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { aluminium } from './alloys.ts'
import { foamAllowable, foamOf } from './foams.ts'
import { evenLoadOnPlate, patchOnPlate } from './loadedPlate.ts'
import { bedStiffness, discOf, discOnFoam } from './onFoam.ts'
import { sandwichBeam, wrinklingStress } from './sandwich.ts'
import { berger, foam, foamTemperature, force, out, plates, sheet, size } from './strengthPorts.ts'

const deckBay = defineReckoner({
  id: 'deck-bay',
  title: 'Thin deck sheet under a foot',
  trade: 'strength',
  says: 'Aluminium sheet supported round a bay, a load on a patch in the middle. Two answers: edges held in, where the sheet hangs like a net, and edges free to pull in, where it only bends. Riveted decks lie between; bending alone is not to be believed above half a thickness of deflection.',
  inputs: [
    size('a', 'Length of the bay.', { min: 0.02 }),
    size('b', 'Width of the bay.', { min: 0.02 }),
    sheet,
    force('load', 'Load: a 90 kg person stands with 883 N, steps with twice that.'),
    size('u', 'Patch along the bay.', { assumed: 0.08 }),
    size('v', 'Patch across the bay.', { assumed: 0.08 }),
  ],
  outputs: [
    out('deflection', 'Deflection with the edges held in.', 'length', 'mm'),
    out('stress', 'Stress in the middle, held in.', 'pressure', 'MPa'),
    out('edgePull', 'Pull on the edges, held in.', 'lineLoad', 'N/mm'),
    out('deflectionFree', 'Deflection by bending alone.', 'length', 'mm'),
    out('stressFree', 'Stress by bending alone.', 'pressure', 'MPa'),
  ],
  reckon: (g) => {
    const plate = { a: g.a, b: g.b, t: g.t, modulus: aluminium.modulus, poisson: aluminium.poisson }
    const patch = { load: g.load, u: g.u, v: g.v }
    const held = patchOnPlate(plate, patch, { held: true })
    const free = patchOnPlate(plate, patch)
    return {
      deflection: held.deflection,
      stress: held.stress,
      edgePull: held.tension,
      deflectionFree: free.deflection,
      stressFree: free.stress,
    }
  },
  sources: [plates, berger],
})

const plateEven = defineReckoner({
  id: 'plate-even-load',
  title: 'Plate under even pressure',
  trade: 'strength',
  says: 'A supported rectangular plate of any material in bending: deflection and greatest stress. Holds while it sags less than half its thickness.',
  inputs: [
    size('a', 'Long side.', { min: 1e-3 }),
    size('b', 'Short side.', { min: 1e-3 }),
    sheet,
    kPa('pressure', 'Pressure.', 0, 1e8),
    gigapascals('modulus', 'Elastic modulus.', 1e6, 5e11, 70e9),
    plainRatio('poisson', 'Poisson’s ratio.', 0, 0.49, 0.33),
  ],
  outputs: [
    out('deflection', 'Deflection in the middle.', 'length', 'mm'),
    out('stress', 'Stress in the middle.', 'pressure', 'MPa'),
  ],
  reckon: (g) => {
    const r = evenLoadOnPlate({ a: g.a, b: g.b, t: g.t, modulus: g.modulus, poisson: g.poisson }, g.pressure)
    return { deflection: r.deflection, stress: r.stress }
  },
  sources: [`${plates}, § 30`],
})

const onFoam = defineReckoner({
  id: 'sheet-on-foam',
  title: 'Sheet lying on foam under a foot',
  trade: 'strength',
  says: 'An aluminium sheet spreads a load over foam. Holds for sheet larger than about four reaches each way.',
  inputs: [
    sheet,
    foam,
    size('depth', 'Depth of foam down to something firm.', { min: 2e-3, max: 2 }),
    force('load', 'Load.'),
    size('u', 'Patch, one side.', { assumed: 0.08, min: 5e-3 }),
    size('v', 'Patch, other side.', { assumed: 0.08, min: 5e-3 }),
    foamTemperature,
  ],
  outputs: [
    out('deflection', 'Under the foot.', 'length', 'mm'),
    out('pressure', 'On the foam.', 'pressure', 'kPa'),
    out('allowed', 'That the foam may have under feet.', 'pressure', 'kPa'),
    out('stress', 'In the sheet at most, under the foot or inside its rim.', 'pressure', 'MPa'),
    out('reach', 'How far the sheet spreads a load.', 'length', 'mm'),
  ],
  reckon: (g, w) => {
    const f = foamOf(w.foam)
    const s = {
      modulus: aluminium.modulus,
      poisson: aluminium.poisson,
      t: g.t,
      bed: bedStiffness(f.modulus, g.depth),
    }
    const r = discOnFoam(s, g.load, discOf(g.u, g.v))
    // a foot wider than the sheet can spread bends it most inside its rim: looked for on a plate that ends far beyond
    const side = Math.max(g.u, g.v) + 12 * r.reach
    const wide = patchOnPlate(
      { a: side, b: side, ...s },
      { load: g.load, u: g.u, v: g.v },
      { bed: s.bed, terms: 199 },
    )
    return {
      deflection: r.deflection,
      pressure: r.pressure,
      allowed: foamAllowable(f, 'foot', g.temperature),
      stress: Math.max(r.stress, wide.bending),
      reach: r.reach,
    }
  },
  sources: [`${plates}, § 58`, 'H. M. Westergaard, Public Roads 7 (1926)', 'ASTM C578 and D6817'],
  cautions: ['Foam moduli vary by a third from maker to maker.'],
})

const sandwich = defineReckoner({
  id: 'sandwich-strip',
  title: 'Sandwich of sheet and foam',
  trade: 'strength',
  says: 'A strip on two supports with a load in the middle: bending, shear of the core, stress in the faces, and the stress at which a face wrinkles.',
  inputs: [
    size('face', 'Thickness of each face.', { max: 0.02 }),
    size('core', 'Thickness of the core.', { max: 0.5 }),
    foam,
    size('width', 'Width of the strip.', { min: 0.01 }),
    size('span', 'Between the supports.', { min: 0.02 }),
    force('load', 'Load in the middle.'),
  ],
  outputs: [
    out('deflection', 'In the middle.', 'length', 'mm'),
    out('bending', 'Of that, by bending.', 'length', 'mm'),
    out('shear', 'Of that, by shear of the core.', 'length', 'mm'),
    out('faceStress', 'In the faces.', 'pressure', 'MPa'),
    out('wrinkling', 'At which a face wrinkles.', 'pressure', 'MPa'),
    out('coreStress', 'Shear in the core.', 'pressure', 'kPa'),
    out('coreAllowed', 'Shear the core bears, half its strength.', 'pressure', 'kPa'),
  ],
  reckon: (g, w) => {
    const f = foamOf(w.foam)
    const s = {
      face: g.face,
      core: g.core,
      faceModulus: aluminium.modulus,
      coreModulus: f.modulus,
      coreShear: f.shearModulus,
    }
    const r = sandwichBeam(s, g.width, g.span, g.load)
    return {
      deflection: r.bending + r.shear,
      bending: r.bending,
      shear: r.shear,
      faceStress: r.faceStress,
      wrinkling: wrinklingStress(s),
      coreStress: r.coreStress,
      coreAllowed: 0.5 * f.shearStrength,
    }
  },
  sources: [
    'H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969)',
    'N. J. Hoff and S. E. Mautner, J. Aero. Sci. 12 (1945): wrinkling',
  ],
  cautions: ['Bond with polyurethane or epoxy: polyester resin and petrol dissolve polystyrene.'],
})

const foamAllow = defineReckoner({
  id: 'foam-allowable',
  title: 'Pressure a foam may carry',
  trade: 'strength',
  says: 'Parked loads creep, feet come again and again, a jump is rare. Falls to nothing as the foam softens.',
  inputs: [foam, foamTemperature],
  outputs: [
    out('parked', 'Parked loads.', 'pressure', 'kPa'),
    out('foot', 'Feet.', 'pressure', 'kPa'),
    out('jump', 'A jump.', 'pressure', 'kPa'),
    out('crush', 'Strength at yield or 10 %.', 'pressure', 'kPa'),
    out('hottest', 'Hottest for long.', 'temperature', '°C'),
  ],
  reckon: (g, w) => {
    const f = foamOf(w.foam)
    const at = (use: 'parked' | 'foot' | 'jump') => foamAllowable(f, use, g.temperature)
    return { parked: at('parked'), foot: at('foot'), jump: at('jump'), crush: f.crush, hottest: f.hottest }
  },
  sources: ['ASTM C578 and D6817', 'Parts of the strength: data sheets on creep, and judgement for the jump'],
})

export const plateReckoners: readonly Reckoner[] = [deckBay, plateEven, onFoam, sandwich, foamAllow]
