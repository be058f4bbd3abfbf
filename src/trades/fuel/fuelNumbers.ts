/** The fuel in tables: circuit, tank in every lean, chips, the order of work that keeps swarf out, tests, rules to compare with. */
import {
  inCm,
  inCm3,
  inDegrees,
  inKpa,
  inMicrons,
  inMinutes,
  inMm,
  inNewtons,
  inPercent,
  inTimes,
} from '../../base/answers/amounts.ts'
import type { Amount } from '../../base/answers/sentence.ts'
import type { NumberTable, Solved } from '../trade.ts'
import { type ChipEffect, chipInJet } from './chipInJet.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelCraft, FuelInputs } from './fuelFromCraft.ts'
import { inTankLitres } from './fuelSay.ts'
import type { ChipForm } from './jetFlow.ts'
import { bottleTest, systemTest } from './workOrder.ts'

type Cell = string | Amount

export function fuelNumbers({ inputs, answer }: Solved<FuelInputs, FuelAnswer | undefined>): NumberTable[] {
  const c = inputs.known
  if (!c || !answer) return []
  return [
    ...circuitTables(answer),
    tankTable(answer),
    ...chipTables(answer),
    workTable(c, answer),
    testTable(c, answer),
    rulesTable(c),
  ]
}

function circuitTables({ feed }: FuelAnswer): NumberTable[] {
  if (feed.states.length === 0) return []
  return [
    {
      caption: 'Pressure in the lines, the tank nearly empty, twice the mean flow',
      heads: ['Lean', ...feed.circuit.nodes.map((n) => n.name)],
      rows: feed.states.map((s) => [s.state.name, ...s.nearlyEmpty.map((p) => inKpa(p, 0.01))]),
    },
  ]
}

function tankTable({ tank }: FuelAnswer): NumberTable {
  return {
    caption: 'The tank in every lean',
    heads: ['Lean', 'Trim', 'Heel', 'Vent dry up to', 'Out of reach'],
    rows: tank.states.map((s) => [
      s.state.name,
      inDegrees(s.state.trim),
      inDegrees(s.state.heel, 1),
      inPercent(s.ventAt),
      inTankLitres(s.left),
    ]),
  }
}

function chipTables({ jets }: FuelAnswer): NumberTable[] {
  const jet = jets.jets.find((j) => j.running)
  if (!jet) return []
  const engines = jets.jets.filter((j) => j.running).map((j) => ({ name: j.engine, lambda: j.set }))
  const row = (k: number, form: ChipForm): Cell[] => {
    const e: ChipEffect = chipInJet({ k, form, engine: 0, engines })
    return [
      form === 'strip' ? 'strip across' : form === 'edge' ? 'at the edge' : 'round grain',
      inMicrons(k * jet.bore),
      inPercent(e.blocked, 0.1),
      inTimes(e.airFuel, 0.1),
      e.fullThrottle ? 'fires' : 'no',
      inPercent(e.torque),
      inTimes(e.choke, 0.01),
    ]
  }
  return [
    {
      caption: 'A chip in the main jet',
      heads: [
        'Chip',
        'Width',
        'Jet shut',
        'Air to fuel',
        'Full throttle',
        'Best torque',
        'Depression wanted',
      ],
      rows: [0.1, 0.2, 0.25, 0.3]
        .flatMap((k) => [row(k, 'strip'), row(k, 'edge')])
        .concat([row(0.25, 'round')]),
    },
  ]
}

/** Steps after a hole was drilled in a tank, so that no swarf is left for the jets: common practice, no source. */
function workTable(c: FuelCraft, { tank, jets }: FuelAnswer): NumberTable {
  const jet = Math.min(...jets.jets.map((j) => j.bore))
  return {
    caption: 'After drilling the tank: the order that keeps swarf out of the jets',
    heads: ['Step', 'How', 'How much'],
    rows: [
      [
        'drill',
        'only a tank that never held fuel; greased bit, from the inside out where it goes',
        'a little at a time',
      ],
      ['deburr', 'both sides of the hole, the vacuum cleaner held at it', 'no edge left to feel'],
      ['shake', 'upside down, dry', inTimes(3, 1)],
      ['wash', 'water through a white cloth until it stays clean twice', inTankLitres(3 * c.capacity)],
      ['dry', 'air through it until no drop comes', 'dry'],
      ['blow', 'lines from the carburettor’s end back to the open tank end', 'each line'],
      [
        'filter',
        'a temporary one in the trunk for the first tank; look at it through a lens',
        inMicrons(Math.min(100e-6, 0.25 * jet)),
      ],
      [
        'bottle test',
        'each jet under a steady head, a minute each; two that differ by more than 5 % are not alike',
        inCm3(60 * bottleTest(jet, c.density.value)),
      ],
      ['count', 'grains in the filter wider than a quarter of the jet', inMicrons(0.25 * jet)],
      ['fit', 'the final filter, then fill to the mark', inTankLitres(tank.fillTo * c.capacity)],
    ],
  }
}

function testTable(c: FuelCraft, { tank }: FuelAnswer): NumberTable {
  const head = Math.max(0, (c.ventEnd?.at[2] ?? 0) - c.tank.foot[2])
  return {
    caption: 'Leak and pressure test, with water in most of it first',
    heads: ['What', 'How much'],
    rows: [
      ['hold, tank and lines together', inKpa(systemTest(head, c.density.value), 0.1)],
      ['as a column of water', inCm(systemTest(head, c.density.value) / (998 * 9.80665))],
      ['for at least', inMinutes(5)],
      ['gauge reading to, at most', inKpa(3 * systemTest(head, c.density.value))],
      ['leaks: brush with soap water, all seams', 'no bubble'],
      ['fill by hand first to', inTankLitres(0.9 * tank.body.capacity)],
    ],
  }
}

/** Published figures beside this craft's: to compare with, not to be met by this table. */
function rulesTable(c: FuelCraft): NumberTable {
  const { section } = c
  return {
    caption: 'Published figures to compare with (33 CFR 183 subpart J; ISO 10088 from memory)',
    heads: ['What', 'Published', 'Here'],
    rows: [
      ['openings of the tank', 'on top only (183.518)', section.pickup.kind],
      ['vent hose, fast filling', inMm(14.3e-3, 0.1), inMm(section.vent.bore.value, 0.1)],
      ['vent hose, ISO', inMm(11e-3), inMm(section.vent.bore.value, 0.1)],
      ['movement of the strapped tank', inMm(6.35e-3, 0.01), `${section.retention.kind}`],
      [
        'pull of a fastening, shocks of 25 times the weight',
        inNewtons(25 * 9.80665 * (c.empty + c.capacity * c.density.value)),
        inNewtons(section.retention.number.value * section.retention.strength.value),
      ],
    ],
  }
}
