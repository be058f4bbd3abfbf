/** Craft that are wrong, each in one way a builder gets wrong: what every judgement is tried on. */
import type { Craft } from '../../src/craft/index.ts'
import { readCraft, whatIf } from '../../src/craft/index.ts'
import { templateKinds, templateText } from '../../src/craft/templates.ts'
import { demoCraft } from '../../src/whole/push/demo.testkit.ts'

/** Name and craft; the demos themselves come first. */
export function wrongCrafts(): [string, Craft][] {
  const heron = demoCraft('heron')
  const teal = demoCraft('teal')
  const put = (craft: Craft, values: Record<string, number | string | boolean>) => whatIf(craft, values)
  return [
    ['heron', heron],
    ['teal', teal],
    ...templateKinds.map((kind): [string, Craft] => [
      `new, ${kind}`,
      readCraft(templateText('new', kind)).craft!,
    ]),
    ['far too steep', put(heron, { 'jet.rotor.pitch': 0.19 })],
    ['far too shallow', put(heron, { 'jet.rotor.pitch': 0.05 })],
    ['direct drive', put(teal, { 'drive.ratio': 1, 'jet.rotor.pitch': 0.11 })],
    ['far too heavy', put(heron, { 'rider.mass': 190, 'weights.0.mass': 190 })],
    ['one engine off', put(teal, { 'engines.0.running': false })],
    ['thin air, cold water', put(heron, { 'place.altitude': 3500, 'place.water temperature': 274 })],
    ['worn and rough', put(heron, { 'jet.rotor.gap': 1.5e-3, 'jet.rotor.roughness': 60e-6 })],
    ['a thin root', put(heron, { 'jet.rotor.root thickness': 2.5e-3, 'jet.rotor.blades': 5 })],
    ['a close grate', put(heron, { 'jet.grate.gap': 5e-3, 'jet.grate.bar': 8e-3 })],
    ['a wide nozzle', put(teal, { 'jet.nozzle.bore': 0.1 })],
    ['high up', put(teal, { 'place.altitude': 3500, 'jet.nozzle.bore': 0.06 })],
    ['a fine nozzle', put(teal, { 'jet.nozzle.bore': 0.035 })],
    ['a thin deck', put(heron, { 'deck.bays.0.skin': 0.4e-3 })],
    ['kneeling on the edge', put(heron, { 'rider.position': 0.1, 'rider.off centre': 0.3 })],
    [
      'hardly fed, by gravity into a tilted bowl',
      put(heron, {
        'fuel.feed': 'gravity',
        'fuel.pump': 0,
        'fuel.lines.0.rise': -0.2,
        'fuel.carburettor.kind': 'float',
        'fuel.carburettor.bowl reach': 0.04,
        'fuel.oil': 0.005,
      }),
    ],
    [
      'its tank full, the vent aft, loose',
      put(heron, {
        'fuel.vent.forward': -0.1,
        'fuel.vent.bore': 1e-3,
        'tanks.0.liquid': 0.0078,
        'fuel.retention.kind': 'nothing',
        'fuel.filter.at': 'none',
        'fuel.use.hours': 6 * 3600,
      }),
    ],
    [
      'shut up with its heat',
      put(heron, {
        'bay.cooling': 'fins',
        'bay.pipe': 'bare',
        'bay.engine air': 'bay',
        'bay.openings.0.area': 1e-4,
        'bay.openings.1.area': 1e-4,
        'bay.printed': 'PLA',
        'bay.deck': 'dark',
      }),
    ],
    [
      'its neck of no table, its hatch too small, printed coarsely',
      put(heron, {
        'tanks.0.neck.over crests': 0.0372,
        'tanks.0.neck.pitches': 4,
        'tanks.0.neck.span': 0.0169,
        'openings.0.clear': 0.08,
        'printer.layer': 0.4e-3,
        'printer.material': 'ABS',
      }),
    ],
    [
      'hard to start and to stop',
      put(teal, {
        'cord.drum': 0.02,
        'cord.bends.0.over': 'metal',
        'cable.kill': 'one engine',
        'cable.spring': 3,
        'cable.bends': 9,
        'cable.wiring': 'open',
      }),
    ],
  ]
}
