/** The ways of the pipes, what lies nearest to each, and what would close them on their holes. */
import type { Solved } from '../../base/answers/solved.ts'
import { minus, type Place, type Vec } from '../../shapes/placing.ts'
import {
  endOf,
  flangeFrame,
  fromBox,
  fromPipe,
  type Gap,
  leastGap,
  type Route,
  routeOf,
  sampled,
} from '../../shapes/route.ts'
import { type Closing, closeRoute } from '../../shapes/routeClose.ts'
import type { PatternsInputs, PipeIn } from './patternsFromCraft.ts'

export interface Nearest extends Gap {
  to: string
  path: string
  what: 'foam' | 'tank' | 'pipe'
}

export interface PipeWay {
  pipe: PipeIn
  start: Place
  route: Route
  end: Vec
  /** how far the end is from its hole, m, and what would close it */
  miss?: number
  closing?: Solved<Closing>
  /** the least gap to each kind of thing */
  nearest: readonly Nearest[]
}

export interface PatternsAnswer {
  ways: readonly PipeWay[]
}

/** an end farther from its hole than this is worth closing, m: what is said of it is judged by its own limit */
const worthClosing = 1e-5

export function patternsAnswer({ pipes, near }: PatternsInputs): PatternsAnswer {
  const laid = pipes.flatMap((pipe) => {
    const r = pipe.route
    // a flange that aims at itself points nowhere, and is told of
    if (!r || !(Math.hypot(...minus(r.aims, r.flange)) > 1e-6)) return []
    const start = flangeFrame(r.flange, r.aims)
    const route = routeOf(start, pipe.parts)
    return [{ pipe, start, route, samples: sampled(route) }]
  })
  const ways = laid.map(({ pipe, start, route, samples }, i): PipeWay => {
    const gaps = [
      ...near.map((box) => ({
        to: box.name,
        path: box.path,
        what: box.what,
        ...leastGap(samples, (at) => fromBox(box, at))!,
      })),
      ...laid.flatMap((other, j) =>
        j === i
          ? []
          : [
              {
                to: other.pipe.name,
                path: `${other.pipe.at}.route`,
                what: 'pipe' as const,
                ...leastGap(samples, (at) => fromPipe(other.samples, at))!,
              },
            ],
      ),
    ]
    const nearest = (['foam', 'tank', 'pipe'] as const).flatMap(
      (what) => gaps.filter((g) => g.what === what).sort((a, b) => a.gap - b.gap)[0] ?? [],
    )
    const end = endOf(route)
    const hole = pipe.route?.hole
    const miss = hole && Math.hypot(...minus(end, hole))
    return {
      pipe,
      start,
      route,
      end,
      nearest,
      ...(miss === undefined ? {} : { miss }),
      ...(hole && miss !== undefined && miss > worthClosing
        ? { closing: closeRoute(start, pipe.parts, hole) }
        : {}),
    }
  })
  return { ways }
}
