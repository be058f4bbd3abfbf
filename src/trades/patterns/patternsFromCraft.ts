/** The craft file to what patterns are made from: each engine's pipe as legs, its muffler, what lies in its way, the sheet there is. SI. */
import type { Craft } from '../../craft/index.ts'
import type { Vec } from '../../shapes/placing.ts'
import type { RouteBox, RouteLeg } from '../../shapes/route.ts'
import type { DeckAsks } from './deckWork.ts'

/** One part of a pipe to be made: inside diameters at its ends, wall, m; where it stands in the file. */
export interface PipePart extends RouteLeg {
  path: string
  from: number
  to: number
  wall: number
  made: 'rolled' | 'box' | 'tube'
}

export interface PipeIn {
  /** index of the engine, its name, its path */
  engine: number
  name: string
  at: string
  parts: readonly PipePart[]
  wall: number
  flangeBore: number
  muffler?: { length: number; width: number; height?: number; inlet: number; outlet: number }
  outlet?: { bore: number; flap: boolean }
  route?: { flange: Vec; aims: Vec; hole?: Vec }
}

export interface PatternsInputs {
  pipes: readonly PipeIn[]
  /** foam and tanks, each with its path */
  near: readonly (RouteBox & { path: string; what: 'foam' | 'tank' })[]
  deck: Craft['deck']
  tanks: Craft['tanks']
  /** what strength and hull ask for; nothing where the trade is asked alone */
  asks: DeckAsks
  stock: Craft['stock']
}

type Point = readonly { readonly value: number }[]
const vec = (p: Point): Vec => [p[0]!.value, p[1]!.value, p[2]!.value]

const nothing: DeckAsks = { doublers: [], frames: [] }

export function patternsFromCraft(craft: Craft, asks: DeckAsks = nothing): PatternsInputs {
  return {
    pipes: craft.engines.flatMap((_, i) => pipeOf(craft, i) ?? []),
    near: [
      ...craft.foam.map((f, i) => ({
        name: f.name,
        path: `foam.${i}`,
        what: 'foam' as const,
        from: lowest(vec(f.from), vec(f.to), Math.min),
        to: lowest(vec(f.from), vec(f.to), Math.max),
      })),
      ...craft.tanks.flatMap((t, i) => {
        if (t.kind !== 'box') return []
        const [x, y, z] = vec(t.foot)
        const [l, w] = [t.length.value / 2, t.width.value / 2]
        return [
          {
            name: t.name,
            path: `tanks.${i}`,
            what: 'tank' as const,
            from: [x - l, y - w, z] as Vec,
            to: [x + l, y + w, z + t.height.value] as Vec,
          },
        ]
      }),
    ],
    deck: craft.deck,
    tanks: craft.tanks,
    asks,
    stock: craft.stock,
  }
}

const lowest = (a: Vec, b: Vec, pick: (p: number, q: number) => number): Vec => [
  pick(a[0], b[0]),
  pick(a[1], b[1]),
  pick(a[2], b[2]),
]

function pipeOf(craft: Craft, i: number): PipeIn[] | undefined {
  const engine = craft.engines[i]
  if (engine?.kind !== 'two-stroke' || !engine.exhaust) return undefined
  const { exhaust } = engine
  const at = `engines.${i}.exhaust`
  const wall = exhaust.wall.value
  const parts: PipePart[] = exhaust.pipe.map((s, k) => ({
    name: s.name ?? `part ${k + 1}`,
    path: `${at}.pipe.${k}`,
    length: s.length.value,
    from: s.from.value,
    to: s.to.value,
    startRadius: s.from.value / 2 + s.wall.value,
    endRadius: s.to.value / 2 + s.wall.value,
    bend: s.bend.value,
    clock: s.clock.value,
    wall: s.wall.value,
    made: 'rolled',
  }))
  const straight = (name: string, path: string, length: number, bore: number, made: PipePart['made']) => {
    const radius = bore / 2 + wall
    if (length > 0)
      parts.push({
        name,
        path: `${at}.${path}`,
        length,
        from: bore,
        to: bore,
        startRadius: radius,
        endRadius: radius,
        bend: 0,
        clock: 0,
        wall,
        made,
      })
  }
  const { stinger, muffler, outlet, route } = exhaust
  const narrow = stinger?.bore.value ?? exhaust.pipe.at(-1)!.to.value
  if (stinger) straight('stinger', 'stinger', stinger.length.value, narrow, 'tube')
  if (muffler)
    straight(
      'muffler',
      'muffler',
      muffler.length.value,
      Math.max(muffler.width.value, muffler.height?.value ?? 0),
      'box',
    )
  if (outlet) straight('outlet', 'outlet', outlet.length.value, outlet.bore.value, 'tube')
  return [
    {
      engine: i,
      name: engine.name ?? `engine ${i + 1}`,
      at,
      parts,
      wall,
      flangeBore: exhaust.duct.bore?.value ?? exhaust.pipe[0]!.from.value,
      ...(muffler
        ? {
            muffler: {
              length: muffler.length.value,
              width: muffler.width.value,
              ...(muffler.height ? { height: muffler.height.value } : {}),
              inlet: narrow,
              outlet: outlet?.bore.value ?? narrow,
            },
          }
        : {}),
      ...(outlet ? { outlet: { bore: outlet.bore.value, flap: outlet.flap } } : {}),
      ...(route
        ? {
            route: {
              flange: vec(route.flange),
              aims: vec(route.aims),
              ...(route.hole ? { hole: vec(route.hole) } : {}),
            },
          }
        : {}),
    },
  ]
}
