/** The standard leak: a hole low in the stern, nobody aboard, the space it opens into filling. */

import { freeOf } from '../../hull/aboard/boxes.ts'
import { weightSum } from '../../hull/aboard/masses.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import type { Mesh } from '../../physics/solid/mesh.ts'
import { sliceBetween, sliceBox } from '../../physics/solid/slice.ts'
import { type FloatInput, slackOf } from './input.ts'
import { type LeakRun, leakRun } from './leak.ts'
import type { LoadCase } from './loadCase.ts'

export interface LeakCase {
  run: LeakRun
  /** where the hole is, m */
  hole: [number, number, number]
  /** m across */
  diameter: number
  /** name of the space that fills */
  space: string
}

/** Runs it; `diameter` of the hole, m, and in how many steps the space is filled: its time is within a part in a hundred from 24 on. */
export function leakFromInput(input: FloatInput, nobody: LoadCase, diameter = 0.01, steps = 30): LeakCase {
  const x = 0.05 * input.hull.length
  const first = input.compartments.find((c) => !c.sealed && c.from <= x && c.to >= x)
  const last = input.compartments.some((c) => c.from <= x && c.to >= x && c.sealed)
  const open = first ?? (last ? input.compartments.find((c) => !c.sealed) : undefined)
  const from = open?.from ?? -1
  const to = open?.to ?? input.hull.length + 1
  const mesh = sliceBetween(input.hull.mesh, 'x', from, to) ?? input.hull.mesh
  const foamPart = foamIn(input, mesh, from, to)
  const hole: [number, number, number] = [Math.max(from, x), 0, 0.02]
  const fixed = weightSum(input.weights)
  const run = leakRun({
    load: {
      bodies: [{ name: 'hull', mesh: input.hull.mesh, share: 1 }],
      mass: fixed.mass,
      centre: fixed.centre,
      density: input.water,
      liquids: slackOf(input),
    },
    space: mesh,
    permeability: (open?.permeability ?? 0.95) * (1 - foamPart),
    holes: [{ name: 'hole', at: hole, area: (Math.PI * diameter ** 2) / 4 }],
    openings: input.openings,
    start: nobody.attitude,
    steps,
  })
  return { run, hole, diameter, space: open?.name ?? 'the whole hull' }
}

/** Share of a space that foam takes up. */
function foamIn(input: FloatInput, space: Mesh, from: number, to: number): number {
  let foam = 0
  for (const [i, b] of input.foam.entries()) {
    const low: [number, number, number] = [Math.max(from, b.low[0]), b.low[1], b.low[2]]
    const high: [number, number, number] = [Math.min(to, b.high[0]), b.high[1], b.high[2]]
    if (!(high[0] > low[0])) continue
    for (const free of freeOf({ low, high }, input.foam.slice(0, i))) {
      const piece = sliceBox(space, free.low, free.high)
      if (piece !== undefined) foam += solidProperties(piece).volume
    }
  }
  return Math.min(0.95, foam / solidProperties(space).volume)
}
