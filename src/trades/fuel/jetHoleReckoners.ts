/** Reckoners of the small holes: jets, chips, filters, the bottle test. */
import {
  choice,
  kgPerCubicMetre,
  kPa,
  litresPerHour,
  mm,
  percent,
  plainRatio,
  portOf,
  ratio,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { chipInJet, stoichiometric } from './chipInJet.ts'
import { type ChipForm, jetFlow, jetFor } from './jetFlow.ts'
import { bottleTest } from './workOrder.ts'

const trade = 'fuel'
const orifice = 'Orifice flow; discharge of jets 0.70 to 0.80, from memory'
const microns = portOf('length', 'µm')
const perMinute = portOf('volumeFlow', 'L/min')
const density = kgPerCubicMetre('density', 'of the fuel', 650, 900, 745)
const discharge = ratio('discharge', 'of the jet, 0.70 to 0.80', 0.3, 1, 0.75)
const eyes = 'Petrol spits when jets are blown through: glasses and gloves, outdoors, no flame.'

/** Jets, chips and filters. */
export const jetHoleReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'jet-flow',
    title: 'Fuel through a jet',
    trade,
    says: 'What a jet passes under the venturi’s depression, and the jet for another flow. Fuel goes with the square of the bore: 0.80 to 0.75 mm is an eighth less.',
    inputs: [
      mm('bore', 'of the jet', 1e-4, 5e-3),
      kPa('depression', 'at the jet, 1 to 6 at full throttle', 10, 3e4, 2e3),
      litresPerHour('wanted', 'flow to find a jet for', 1e-9, 1e-4, 3.62e-3 / 3600),
      density,
      discharge,
    ],
    outputs: [
      litresPerHour('flow', 'through it'),
      portOf('massFlow', 'kg/h')('mass', 'through it'),
      mm('suits', 'jet for the wanted flow'),
    ],
    reckon: (g) => {
      const flow = jetFlow(g.bore, g.depression, g.density, g.discharge)
      return {
        flow,
        mass: flow * g.density,
        suits: jetFor(g.wanted * g.density, g.depression, g.density, g.discharge),
      }
    },
    sources: [orifice],
  }),
  defineReckoner({
    id: 'chip-in-jet',
    title: 'What a chip in a jet does',
    trade,
    says: 'How much of the jet is shut, the mixture that is left, whether it still fires with the throttle full open, and how much depression a choke has to bring. A chip as wide as the jet is refused.',
    inputs: [
      mm('jet', 'bore of it', 1e-4, 5e-3, 0.8e-3),
      mm('chip', 'width of a strip, height of one at the edge, size of a grain', 0, 5e-3),
      choice('form', 'how it lies', ['strip', 'edge', 'round']),
      plainRatio('airFuel', 'air to fuel by mass without it', 8, 18, 13),
    ],
    outputs: [
      percent('blocked', 'of the jet is shut'),
      plainRatio('mixture', 'air to fuel by mass with it'),
      percent('torque', 'left at best'),
      percent('air', 'above which it dies'),
      plainRatio('choke', 'times the depression that brings it back'),
    ],
    reckon: ({ jet, chip, airFuel }, { form }) => {
      if (chip >= jet) throw new RangeError('chip: as wide as the jet, nothing gets through')
      const e = chipInJet({
        k: chip / jet,
        form: form as ChipForm,
        engine: 0,
        engines: [{ name: 'engine', lambda: airFuel / stoichiometric }],
      })
      return { blocked: e.blocked, mixture: e.airFuel, torque: e.torque, air: e.mostAir, choke: e.choke }
    },
    sources: [
      'Area of a circle less a strip, a segment or a disc',
      'torque over mixture and lean limit from memory',
    ],
    cautions: [eyes],
  }),
  defineReckoner({
    id: 'filter-for-jet',
    title: 'Filter for the smallest hole',
    trade,
    says: 'Opening of a mesh that keeps out a quarter of the smallest hole behind it, and the area of mesh that a line wants. 60 mesh is 250 µm, 100 is 150, 200 is 75, 325 is 45.',
    inputs: [
      mm('hole', 'smallest jet or passage', 5e-5, 5e-3),
      mm('line', 'bore of the hose', 1e-3, 0.03, 4e-3),
    ],
    outputs: [
      microns('opening', 'of the mesh at most'),
      portOf('area', 'cm²')('mesh', 'area of it at least'),
    ],
    reckon: ({ hole, line }) => ({ opening: hole / 4, mesh: 100 * (Math.PI / 4) * line ** 2 }),
    sources: [
      'A quarter, and a hundred times the line’s area: common practice, no source',
      'mesh openings: ASTM E11, from memory',
    ],
  }),
  defineReckoner({
    id: 'jet-bottle-test',
    title: 'Bottle test of a jet',
    trade,
    says: 'What a clean jet passes in a minute under a bottle held a steady height above it; and what one that passed less is shut by. Two that differ by more than 5 % are not alike.',
    inputs: [
      mm('bore', 'of the jet', 1e-4, 5e-3),
      mm('head', 'bottle’s surface over the jet', 0.02, 2, 0.3),
      perMinute('caught', 'in the cup', 1e-9, 1e-3, 0.05e-3 / 60),
      density,
      discharge,
    ],
    outputs: [perMinute('clean', 'what it should pass'), percent('shut', 'by what lies in it')],
    reckon: (g) => {
      const clean = bottleTest(g.bore, g.density, g.head, g.discharge)
      return { clean, shut: Math.max(0, 1 - g.caught / clean) }
    },
    sources: [orifice],
    cautions: [eyes],
  }),
]
