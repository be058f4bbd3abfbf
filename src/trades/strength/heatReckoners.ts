/** Handbook questions of foam beside hot pipes. */
import { celsius, mm, plainRatio } from '../../base/answers/portMakers.ts'
import { defineReckoner, type Port, type Reckoner } from '../../base/answers/reckoner.ts'
import { distanceFor, foamFace, type HotSpot, shieldedFoamFace, wrapFlux, wrapSurface } from './hotFoam.ts'

const source =
  'Radiation of a long cylinder on a small face, view factor r/s; Stefan-Boltzmann constant, CODATA 2018'
const fire =
  'Polystyrene softens at about 75 °C, burns and gives off poisonous smoke; petrol dissolves it. Have an extinguisher at hand for the first runs.'

const temperature = <const N extends string>(name: N, says: string, assumed?: number) =>
  celsius(name, says, 250, 1300, assumed)
const size = <const N extends string>(
  name: N,
  says: string,
  { min = 1e-3, max = 3, assumed }: Partial<Pick<Port, 'min' | 'max' | 'assumed'>> = {},
) => mm(name, says, min, max, assumed)
const film = {
  name: 'film',
  says: 'Heat carried by the air: 8 still, 20 to 30 blown.',
  kind: 'heatTransfer',
  unit: 'W/(m²·K)',
  min: 1,
  max: 300,
  assumed: 8,
} as const satisfies Port

const place = [
  size('diameter', 'Outside diameter of the pipe.'),
  temperature('pipe', 'Skin of the pipe.'),
  temperature('air', 'Air in the bay.', 308.15),
  plainRatio('emissivity', 'Of the pipe: 0.8 rusted, 0.7 dulled, 0.3 bright.', 0.03, 1, 0.7),
  film,
  size('depth', 'Of the foam behind its face.', { assumed: 0.1 }),
] as const

function spotOf(g: Readonly<Record<(typeof place)[number]['name'], number>>, distance: number): HotSpot {
  return {
    radius: g.diameter / 2,
    distance,
    pipe: g.pipe,
    air: g.air,
    emissivity: g.emissivity,
    film: g.film,
    conductivity: 0.036,
    depth: g.depth,
    cool: 293.15,
  }
}

const distance = defineReckoner({
  id: 'heat-distance',
  title: 'How far foam must be from a hot pipe',
  trade: 'strength',
  says: 'Steady heat by radiation on a bare foam face in the air of the bay: its temperature at a distance, and the least distance for a limit.',
  inputs: [
    ...place,
    size('distance', 'From the pipe’s middle to the foam face.'),
    temperature('limit', 'Hottest the face may be: 65 °C leaves 10 K.', 338.15),
  ],
  outputs: [celsius('face', 'Foam face at that distance.'), mm('least', 'Least distance for the limit.')],
  reckon: (g) => {
    if (g.distance <= g.diameter / 2)
      throw new RangeError(
        `distance: ${g.distance} m, expected above the pipe’s radius of ${g.diameter / 2} m`,
      )
    const face = foamFace(spotOf(g, g.distance))
    const least = distanceFor(spotOf(g, 1), g.limit)
    if (!least.converged) throw new RangeError('limit: no distance within 3 m keeps the face that cool')
    return { face: face.value, least: least.value }
  },
  sources: [source],
  cautions: [fire, 'The worst minutes come after the engine stops, with no air moving.'],
})

const shield = defineReckoner({
  id: 'heat-shield',
  title: 'Foam behind a heat shield',
  trade: 'strength',
  says: 'One plate with air on both sides between pipe and foam.',
  inputs: [
    ...place,
    size('distance', 'From the pipe’s middle to the foam face.'),
    plainRatio('shine', 'Emissivity of the plate: 0.1 bright, 0.3 dull.', 0.03, 1, 0.15),
  ],
  outputs: [
    celsius('bare', 'Foam face without the plate.'),
    celsius('face', 'Foam face behind it.'),
    celsius('plate', 'The plate.'),
  ],
  reckon: (g) => {
    const spot = spotOf(g, g.distance)
    if (g.distance <= g.diameter / 2)
      throw new RangeError(
        `distance: ${g.distance} m, expected above the pipe’s radius of ${g.diameter / 2} m`,
      )
    const s = shieldedFoamFace(spot, { emissivity: g.shine, film: g.film })
    return { bare: foamFace(spot).value, face: s.value.foam, plate: s.value.shield }
  },
  sources: [source],
  cautions: [fire],
})

const wrap = defineReckoner({
  id: 'pipe-wrap',
  title: 'Outside of a wrapped pipe',
  trade: 'strength',
  says: 'Conduction through glass tape against air and radiation outside.',
  inputs: [
    size('diameter', 'Outside diameter of the pipe.'),
    size('thickness', 'Of the wrap.', { max: 0.2, assumed: 0.005 }),
    temperature('pipe', 'Skin of the pipe.'),
    temperature('air', 'Air in the bay.', 308.15),
    {
      name: 'conductivity',
      says: 'Of the wrap: glass tape 0.06 to 0.10.',
      kind: 'conductivity',
      unit: 'W/(m·K)',
      min: 0.01,
      max: 2,
      assumed: 0.08,
    },
    film,
  ],
  outputs: [
    celsius('outside', 'Outside of the wrap.'),
    { name: 'flux', says: 'Heat through the pipe’s own surface.', kind: 'heatFlux', unit: 'kW/m²' },
  ],
  reckon: (g) => {
    const r = g.diameter / 2
    const ro = r + g.thickness
    const t = wrapSurface(g.pipe, g.air, r, ro, g.conductivity, g.film)
    return { outside: t.value, flux: wrapFlux(g.conductivity, r, ro, g.pipe - t.value) }
  },
  sources: ['Conduction in a hollow cylinder, any heat-transfer text', source],
  cautions: ['A wrapped pipe runs hotter inside and rusts sooner; fuel on a wrap burns like a wick.'],
})

export const heatReckoners: readonly Reckoner[] = [distance, shield, wrap]
