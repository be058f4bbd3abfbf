/** The circuit from the pick-up's mouth to each carburettor: where its nodes stand, and its pressures in a state. */
import type { Solved } from '../../base/answers/solved.ts'
import type { Liquid } from '../../physics/fluid/hoseDrop.ts'
import {
  type NetworkHose,
  type NetworkNode,
  type NetworkState,
  solveNetwork,
} from '../../physics/fluid/hoseNetwork.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import { type FuelState, worthOf } from './fuelStates.ts'

/** m, inside of rubber and drawn pipe */
const wall = 1.5e-6
/** m³/s at which a filter's drop is given: five litres an hour */
const filterFlow = 5e-3 / 3600

export interface CircuitNode {
  name: string
  /** m, in the craft's axes; across, the circuit is taken to lie in the pick-up's plane */
  at: Vec3
  /** place of its engine in the craft's list of carburettors */
  engine?: number
}

export interface Circuit {
  nodes: CircuitNode[]
  hoses: NetworkHose[]
  /** carburettors that no line reaches, by name */
  lost: string[]
}

/** Values of a circuit that a draw may move; the file's own where left out. */
export interface CircuitDraw {
  /** factors on all bores and narrowest holes, and on all losses; m added to the height of every carburettor */
  bore?: number
  losses?: number
  rise?: number
}

/** The circuit of a craft. */
export function circuitOf(c: FuelCraft, draw: CircuitDraw = {}): Circuit {
  const { tank, section, lines, engines } = c
  const { pickup, filter, feed, pump } = section
  const wide = draw.bore ?? 1
  const floor = tank.foot[2]
  const mouth: Vec3 = [
    tank.foot[0] + pickup.forward.value,
    tank.foot[1] + pickup.toPort.value,
    floor + (pickup.kind === 'bottom outlet' ? 0 : pickup.clearance.value),
  ]
  const nodes: CircuitNode[] = [{ name: 'pick-up', at: mouth }]
  const hoses: NetworkHose[] = []
  const linear = filter.drop.value / filterFlow
  const out = lines.filter((l) => l.from === 'tank')
  let start = 0
  if (pickup.kind !== 'bottom outlet') {
    const height = c.tank.shape.kind === 'lying cylinder' ? c.tank.shape.diameter : c.tank.shape.height
    nodes.push({ name: 'top of the tank', at: [mouth[0], mouth[1], floor + height] })
    const bore = wide * Math.max(...out.map((l) => l.bore.value), 1e-3)
    hoses.push({
      from: 0,
      to: 1,
      bore,
      length: height,
      roughness: wall,
      losses: 0.5,
      narrowest: bore,
      ...(filter.at === 'tank' ? { linear } : {}),
    })
    start = 1
  }
  const place = new Map([['tank', start]])
  const left = [...lines]
  // each line goes on from where one before it ended, whatever order the file has them in
  for (let found = true; found; ) {
    found = false
    for (const l of [...left]) {
      const from = place.get(l.from)
      if (from === undefined || place.has(l.to)) continue
      found = true
      left.splice(left.indexOf(l), 1)
      const engine = engines.findIndex((e) => e.name === l.to)
      const near = nodes[from]!.at
      const base = l.from === 'tank' ? floor : near[2]
      const lift = engine >= 0 ? (draw.rise ?? 0) : 0
      place.set(l.to, nodes.length)
      const filtered =
        (filter.at === 'trunk' && l.from === 'tank') ||
        (filter.at === 'each carburettor' && engine >= 0) ||
        (filter.at === 'tank' && l.from === 'tank' && pickup.kind === 'bottom outlet')
      hoses.push({
        from,
        to: nodes.length,
        bore: wide * l.bore.value,
        length: l.length.value,
        roughness: wall,
        losses: (draw.losses ?? 1) * l.losses.value,
        narrowest: wide * Math.min(l.narrowest.value, l.bore.value),
        ...(filtered ? { linear } : {}),
        ...(feed === 'electric pump' && l.from === 'tank' ? { gain: pump.value } : {}),
      })
      nodes.push({
        name: l.to,
        at: [near[0] + l.run.value, near[1], base + l.rise.value + lift],
        ...(engine >= 0 ? { engine } : {}),
      })
    }
  }
  return { nodes, hoses, lost: engines.flatMap((e) => (place.has(e.name) ? [] : [e.name])) }
}

export interface CircuitLoad {
  /** Pa at the pick-up's mouth */
  mouth: number
  /** m³/s that each engine's carburettor draws, by place in the craft's list */
  flows: readonly number[]
}

/** Pressures and flows of a circuit in a state; Pa gauge. RangeError where a node is cut off. */
export function circuitState(
  circuit: Circuit,
  state: FuelState,
  load: CircuitLoad,
  liquid: Liquid,
): Solved<NetworkState> {
  const nodes = circuit.nodes.map(
    (n, i): NetworkNode => ({
      name: n.name,
      potential: worthOf(state, n.at, liquid.density),
      demand: n.engine === undefined ? 0 : (load.flows[n.engine] ?? 0),
      ...(i === 0 ? { pressure: load.mouth } : {}),
    }),
  )
  return solveNetwork(nodes, circuit.hoses, liquid)
}
