/** Rigid places in space: rotations about a line and the frames that pipes are strung on. Elementary (Rodrigues 1840). */
export type Vec = readonly [x: number, y: number, z: number]

/** A rigid motion: columns of the rotation, then the shift; twelve numbers. */
export type Place = readonly number[]

export const atHome: Place = [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]

export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const unit = (a: Vec): Vec => {
  const l = Math.hypot(a[0], a[1], a[2])
  return [a[0] / l, a[1] / l, a[2] / l]
}

/** Where a point of the body lies once the body is placed. */
export function put(p: Place, v: Vec): Vec {
  return [
    p[0]! * v[0] + p[3]! * v[1] + p[6]! * v[2] + p[9]!,
    p[1]! * v[0] + p[4]! * v[1] + p[7]! * v[2] + p[10]!,
    p[2]! * v[0] + p[5]! * v[1] + p[8]! * v[2] + p[11]!,
  ]
}

/** Where a direction of the body points once the body is placed. */
export function turned(p: Place, v: Vec): Vec {
  const [x, y, z] = put(p, v)
  return [x - p[9]!, y - p[10]!, z - p[11]!]
}

/** First `b`, then `a`. */
export function after(a: Place, b: Place): Place {
  const columns = [0, 3, 6].flatMap((k) => turned(a, [b[k]!, b[k + 1]!, b[k + 2]!]))
  return [...columns, ...put(a, [b[9]!, b[10]!, b[11]!])]
}

/** A turn by an angle (rad, right hand) about a line through a point. */
export function turnAbout(through: Vec, along: Vec, angle: number): Place {
  const k = unit(along)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const column = (e: Vec): Vec => {
    const x = cross(k, e)
    const d = dot(k, e) * (1 - c)
    return [e[0] * c + x[0] * s + k[0] * d, e[1] * c + x[1] * s + k[1] * d, e[2] * c + x[2] * s + k[2] * d]
  }
  const spin = [...column([1, 0, 0]), ...column([0, 1, 0]), ...column([0, 0, 1]), 0, 0, 0]
  const moved = put(spin, through)
  return [...spin.slice(0, 9), ...minus(through, moved)]
}

/** A shift. */
export const shift = (by: Vec): Place => [1, 0, 0, 0, 1, 0, 0, 0, 1, ...by]
