/**
 * A frame laid across stringers shares a load that would otherwise fall on one: a beam on many springs.
 * Source: M. Hetényi, Beams on Elastic Foundation (1946), the endless beam under one load: λ = (K/4EI)^¼ with K the springs' stiffness over
 * their spacing; deflection Pλ/2K, moment P/4λ. With few stringers no fewer than an equal share falls on each.
 */
export interface FrameOnStringers {
  /** N, under one point of the frame */
  load: number
  /** bending stiffness of the frame, N·m² */
  frame: number
  /** bending stiffness of a stringer, N·m², and its span, m */
  stringer: number
  span: number
  /** m between stringers, and how many of them the frame crosses */
  spacing: number
  count: number
}

export interface SharedLoad {
  /** part of the load on the most loaded stringer, 1/count to 1 */
  share: number
  /** N·m in the frame under the load */
  moment: number
  /** m under the load */
  deflection: number
  /** m to where the frame's deflection has died to nothing: its reach to each side */
  reach: number
}

/** Shares a load. RangeError when a stiffness or a length is not positive. */
export function sharedByFrame(f: FrameOnStringers): SharedLoad {
  for (const key of ['frame', 'stringer', 'span', 'spacing', 'count'] as const)
    if (!(f[key] > 0)) throw new RangeError(`${key}: ${f[key]}, expected above 0`)
  // a stringer met in the middle of its span gives like a spring
  const spring = (48 * f.stringer) / f.span ** 3
  const bed = spring / f.spacing
  const lambda = (bed / (4 * f.frame)) ** 0.25
  const share = Math.min(1, Math.max(1 / f.count, (lambda * f.spacing) / 2))
  return {
    share,
    moment: f.load / (4 * lambda),
    deflection: (share * f.load) / spring,
    reach: (3 * Math.PI) / 4 / lambda,
  }
}
