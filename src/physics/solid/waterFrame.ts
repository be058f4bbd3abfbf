/**
 * The water seen from the body. Body axes: x forward from the transom, y to port, z up.
 * The water surface is n·x = h; trim > 0 is bow up, heel > 0 is port side down.
 * n = (sin θ, −sin φ cos θ, cos φ cos θ); e1 points forward along the surface, e2 = n × e1 to port.
 * They satisfy ∂n/∂θ = e1 and ∂n/∂φ = −cos θ · e2, which the equilibrium's exact derivatives rest on.
 */
export interface WaterFrame {
  trim: number
  heel: number
  nx: number
  ny: number
  nz: number
  e1x: number
  e1y: number
  e1z: number
  e2y: number
  e2z: number
}

/** A frame to be filled by `setFrame`; nothing is allocated afterwards. */
export function makeFrame(trim = 0, heel = 0): WaterFrame {
  const frame = { trim, heel, nx: 0, ny: 0, nz: 1, e1x: 1, e1y: 0, e1z: 0, e2y: 1, e2z: 0 }
  return setFrame(frame, trim, heel)
}

/** Turns a frame to a trim and a heel, rad; trim within ±90°. */
export function setFrame(frame: WaterFrame, trim: number, heel: number): WaterFrame {
  const st = Math.sin(trim)
  const ct = Math.cos(trim)
  const sp = Math.sin(heel)
  const cp = Math.cos(heel)
  frame.trim = trim
  frame.heel = heel
  frame.nx = st
  frame.ny = -sp * ct
  frame.nz = cp * ct
  frame.e1x = ct
  frame.e1y = st * sp
  frame.e1z = -st * cp
  frame.e2y = cp
  frame.e2z = sp
  return frame
}

/** Height of a body point above the water n·x = h, m. */
export function heightAbove(frame: WaterFrame, h: number, x: number, y: number, z: number): number {
  return frame.nx * x + frame.ny * y + frame.nz * z - h
}
