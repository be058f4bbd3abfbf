/** A planing hull in balance: the worked example of Savitsky (1964) and an invented board. */
import { ittc57, schoenherr } from '../src/physics/fluid/friction.ts'
import { airDrag } from '../src/trades/drag/air.ts'
import { froude } from '../src/trades/drag/hullSpec.ts'
import {
  flatPlateLift,
  lambdaAtTrim,
  type PlaningCase,
  planingState,
  savitsky1964,
} from '../src/trades/drag/planing.ts'
import { lambdaWindow, settle } from '../src/trades/drag/trimBalance.ts'
import type { Row } from './row.ts'

export const degree = Math.PI / 180
const foot = 0.3048
const poundForce = 4.4482216152605
const slug = 14.59390294 / foot ** 3

export const savitskyPaper =
  'D. Savitsky (1964), Hydrodynamic design of planing hulls, Marine Technology 1(1), worked example (60 000 lb, b 14 ft, LCG 29 ft, VCG 2 ft, β 10°, ε 4°, f 0.5 ft, 40 kn)'

export const codeTwin = 'same equations in an independent second program (Python), double precision'

export function savitskyExample(): Row[] {
  const input = {
    speed: 67.5 * foot,
    weight: 60000 * poundForce,
    beam: 14 * foot,
    deadrise: 10 * degree,
    centre: 29 * foot,
    centreHeight: 2 * foot,
    thrustAngle: 4 * degree,
    thrustBelow: 0.5 * foot,
    density: 1.94 * slug,
    kinematicViscosity: 1e-5 * foot * foot,
    roughness: 4e-4,
  }
  const old = savitsky1964({ ...input, line: schoenherr })
  const modern = savitsky1964({ ...input, line: ittc57 })
  const lift = input.weight / (0.5 * input.density * (input.speed * input.beam) ** 2)
  const Cv = froude(input.speed, input.beam)
  const flat = flatPlateLift(lift, input.deadrise)
  // row 10 of the printed table: λ 3.85, CF 0.00174, ΔCF 0.0004, ρ 1.99, mean speed by the paper's form
  const at2 = 0.012 * 2 ** 1.1
  const mean = 67.5 * Math.sqrt(1 - at2 / (Math.sqrt(3.85) * Math.cos(2 * degree)))
  const table = (0.5 * 1.99 * mean ** 2 * 3.85 * 14 ** 2 * (0.00174 + 0.0004)) / Math.cos(10 * degree)
  const rows: Row[] = [
    {
      id: 'Savitsky example: speed coefficient',
      quantity: 'speed over √(g b)',
      unit: '1',
      expected: 3.18,
      got: Cv,
      within: 0.005,
      origin: 'published',
      source: savitskyPaper,
    },
    {
      id: 'Savitsky example: friction at 2°',
      quantity: 'frictional drag',
      unit: 'lbf',
      expected: 7340,
      got: table,
      withinPart: 2e-3,
      origin: 'published',
      source: `${savitskyPaper}, table 1 row 10; our mean speed and area on its λ, CF and ρ`,
    },
    {
      id: 'Savitsky example: equilibrium trim',
      quantity: 'trim',
      unit: 'deg',
      expected: 2.3,
      got: old.value.trim / degree,
      within: 0.05,
      origin: 'memory',
      source: savitskyPaper,
    },
    {
      id: 'Savitsky example: trim to three figures',
      quantity: 'trim',
      unit: 'deg',
      expected: 2.263,
      got: old.value.trim / degree,
      within: 0.003,
      origin: 'derived',
      source: codeTwin,
    },
    {
      id: 'Savitsky example: trim with ITTC-57',
      quantity: 'trim',
      unit: 'deg',
      expected: 2.263,
      got: modern.value.trim / degree,
      withinPart: 2e-3,
      origin: 'derived',
      source: codeTwin,
    },
    {
      id: 'Savitsky example: drag with ITTC-57',
      quantity: 'drag',
      unit: 'lbf',
      expected: 8859,
      got: modern.value.drag / poundForce,
      withinPart: 2e-3,
      origin: 'derived',
      source: codeTwin,
    },
    {
      id: 'Savitsky example: lift coefficient',
      quantity: 'lift coefficient, deadrise 10°',
      unit: '1',
      expected: 0.06927,
      got: lift,
      within: 1e-5,
      origin: 'exact',
      source: 'W / (½ ρ V² b²) with ρ 1.94 slug/ft³, by hand',
    },
    {
      id: 'Savitsky example: flat-plate lift',
      quantity: 'lift coefficient, flat plate',
      unit: '1',
      expected: 0.08397,
      got: flat,
      within: 1e-5,
      origin: 'derived',
      source: codeTwin,
    },
  ]
  for (const [trim, lambda] of [
    [2, 3.835],
    [3, 2.578],
    [4, 1.775],
  ] as const)
    rows.push({
      id: `Savitsky example: λ at ${trim}°`,
      quantity: 'mean wetted length over beam',
      unit: '1',
      expected: lambda,
      got: lambdaAtTrim(flat, trim * degree, Cv),
      within: 0.003,
      origin: 'derived',
      source: codeTwin,
    })
  rows.push({
    id: 'Savitsky example: λ at 2°, printed',
    quantity: 'mean wetted length over beam',
    unit: '1',
    expected: 3.85,
    got: lambdaAtTrim(flat, 2 * degree, Cv),
    within: 0.02,
    origin: 'published',
    source: `${savitskyPaper}, table 1; chart reading`,
  })
  return rows
}

/** Invented board, 190 kg all up, flat bottom, standing rider: three-force balance. */
export function board(): Row[] {
  const c: PlaningCase = {
    speed: 8,
    weight: 190 * 9.80665,
    beam: 0.7,
    deadrise: 0,
    density: 999.1,
    kinematicViscosity: 1.1386e-6,
    roughness: 4e-4,
    centreHeight: 0.55,
    thrustHeight: 0.05,
    thrustAngle: 0,
    airDrag: airDrag(0.65, 8),
    airHeight: 1.05,
    appendage: 0,
  }
  const s = planingState()
  settle(c, 0.85, lambdaWindow(c, 10), s)
  const row = (id: string, unit: string, expected: number, got: number): Row => ({
    id: `board at 8 m/s: ${id}`,
    quantity: id,
    unit,
    expected,
    got,
    withinPart: 2e-3,
    origin: 'derived',
    source: codeTwin,
  })
  return [
    row('trim', 'deg', 5.836, s.trim / degree),
    row('wetted length over beam', '1', 1.599, s.lambda),
    row('friction', 'N', 83.0, s.friction),
    row('air drag', 'N', 25.48, s.air),
    row('normal force', 'N', 1851, s.normal),
    row('thrust', 'N', 297.8, s.thrust),
    row('drag', 'N', 296.3, s.drag),
  ]
}
