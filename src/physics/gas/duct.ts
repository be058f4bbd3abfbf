/**
 * The duct kernel: unsteady flow of one gas, in one dimension, through tubes whose bore changes.
 *
 *   d(rho A)/dt   + d(rho u A)/dx           = 0
 *   d(rho u A)/dt + d((rho u^2 + p) A)/dx   = p dA/dx - wall friction
 *   d(rho E A)/dt + d((rho E + p) u A)/dx   = - heat to the wall
 *   d(rho Y A)/dt + d(rho u Y A)/dx         = 0        Y: mass fraction of fresh charge, carried along
 *
 * Finite volumes: van Leer slopes on (rho, u, p, Y), Hancock half step, HLLC fluxes with the wave speed
 * bounds of Einfeldt. E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. (2009),
 * chapters 10 and 14; B. van Leer, J. Comput. Phys. 23 (1977) 276 for the limiter. The area source is matched to
 * the pressure flux, so that gas at rest stays at rest whatever its temperature (derived, see `sweepDuct`).
 * Smooth-wall friction: Blasius (1913), f = 0.0791 Re^-1/4 (Fanning). Wall heat: Nu = C Re^3/4 (C = 0.07 for
 * engine manifolds: Depcik and Assanis, SAE 2002-01-0372) on a laminar floor of 3.66.
 * Viscosity and conductivity of exhaust gas: G. P. Blair, Design and Simulation of Two-Stroke Engines
 * (SAE R-161, 1996), fits in temperature, from memory.
 *
 * All ducts live in one Float64Array (arena.ts). A step of all ducts is
 *   predictEnds -> (the caller solves every boundary and writes `edge`) -> sweep
 */

import { at, type Ducts, field, mostCells } from './arena.ts'

/**
 * The kernel in a scope of its own: names and scratch of a function's scope are constants to the compiler, those of a module,
 * once it is built, are looked up anew at every use, which costs a tenth of the speed.
 */
function makeKernel() {
  const { RHO, U, P, Y, V, FACE, INV_AREA, TAPER, WALL, DRAG, HEAT, SUM_H, SUM_HT, DIAMETER, BEND } = field

  /** Longest stable step, s: `courant` (0.8 or less) times the shortest cell crossing time of the state as it stands. */
  function stableStep(g: Ducts, courant: number): number {
    let least = Infinity
    for (let d = 0; d < g.count; d++) {
      let fastest = 1
      for (let i = g.first[d]!; i <= g.last[d]!; i++) {
        const b = at(i)
        const s = Math.abs(g.cell[b + U]!) + Math.sqrt(g.gamma * g.cell[b + P]! * g.cell[b + V]!)
        if (s > fastest) fastest = s
      }
      if (g.dx[d]! / fastest < least) least = g.dx[d]! / fastest
    }
    return courant * least
  }

  /** The same from the waves the last sweep met at its faces: free, and a step late, which the margin to 1 covers. */
  function nextStep(g: Ducts, courant: number): number {
    let least = Infinity
    for (let d = 0; d < g.count; d++) {
      const t = g.dx[d]! / g.fastest[d]!
      if (t < least) least = t
    }
    return courant * least
  }

  /**
   * Fills the ghosts and predicts the outer face states of every duct's end cells, dt/2 ahead, into `end`.
   * The ghost stands a third of the inner difference away, which makes the harmonic limiter return half the
   * one-sided slope. `wrapGhosts` afterwards turns a duct into a ring.
   */
  function predictEnds(g: Ducts, dt: number): void {
    for (let d = 0; d < g.count; d++) {
      const a = at(g.first[d]!)
      const b = at(g.last[d]!)
      for (let f = RHO; f <= Y; f++) {
        g.cell[a - 16 + f] = g.cell[a + f]! + (g.cell[a + f]! - g.cell[a + 16 + f]!) / 3
        g.cell[b + 16 + f] = g.cell[b + f]! + (g.cell[b + f]! - g.cell[b - 16 + f]!) / 3
      }
      predictEnd(g, d, a, 0, dt)
      predictEnd(g, d, b, 1, dt)
    }
  }

  /** Ghosts of duct d taken from its other end, for a ring; the caller then sets both edges to the same flux. */
  function wrapGhosts(g: Ducts, d: number, dt: number): void {
    const a = at(g.first[d]!)
    const b = at(g.last[d]!)
    for (let f = RHO; f <= Y; f++) {
      g.cell[a - 16 + f] = g.cell[b + f]!
      g.cell[b + 16 + f] = g.cell[a + f]!
    }
    predictEnd(g, d, a, 0, dt)
    predictEnd(g, d, b, 1, dt)
  }

  /** van Leer's harmonic mean of two differences, zero at an extremum */
  function slope(a: number, b: number): number {
    return a * b > 0 ? (2 * a * b) / (a + b) : 0
  }

  function predictEnd(g: Ducts, d: number, b: number, side: 0 | 1, dt: number): void {
    const a = g.cell
    const r1 = a[b + RHO]!
    const u1 = a[b + U]!
    const p1 = a[b + P]!
    const y1 = a[b + Y]!
    const dr = slope(r1 - a[b - 16 + RHO]!, a[b + 16 + RHO]! - r1)
    const du = slope(u1 - a[b - 16 + U]!, a[b + 16 + U]! - u1)
    const dp = slope(p1 - a[b - 16 + P]!, a[b + 16 + P]! - p1)
    const dy = slope(y1 - a[b - 16 + Y]!, a[b + 16 + Y]! - y1)
    const sigma = (0.5 * dt) / g.dx[d]!
    const stretch = du + u1 * a[b + TAPER]!
    const half = side === 0 ? -0.5 : 0.5
    const e = 8 * d + 4 * side
    const r = r1 + half * dr - sigma * (u1 * dr + r1 * stretch)
    const q = p1 + half * dp - sigma * (u1 * dp + g.gamma * p1 * stretch)
    const fit = r > 0 && q > 0
    g.end[e] = fit ? r : r1
    g.end[e + 1] = fit ? u1 + half * du - sigma * (u1 * du + dp / r1) : u1
    g.end[e + 2] = fit ? q : p1
    g.end[e + 3] = fit ? y1 + half * dy - sigma * u1 * dy : y1
  }

  /**
   * Friction and heat-transfer rates of every cell from the state as it stands, after booking what the old rates meant for
   * the walls over the time `since` they were found. They follow the flow through a steady-flow correlation that knows
   * nothing of microseconds, so refreshing them every few steps loses nothing.
   */
  function refreshWallRates(g: Ducts, since: number): void {
    const a = g.cell
    const invR = 1 / g.gasConstant
    const fourByCv = (4 * (g.gamma - 1)) / g.gasConstant
    for (let d = 0; d < g.count; d++) {
      if (g.viscous[d] === 0) continue
      const rough = g.roughFriction[d]!
      const heatC = g.heatFactor[d]!
      const laminar = heatC > 0 ? 3.66 : 0
      for (let i = g.first[d]!; i <= g.last[d]!; i++) {
        const b = i << 4
        const t = a[b | P]! * a[b | V]! * invR
        const dia = a[b | DIAMETER]!
        const mu = 7.457e-6 + t * (4.1547e-8 - 7.4793e-12 * t)
        const conduct = 6.1944e-3 + t * (7.3814e-5 - 1.2491e-8 * t)
        const reynolds = Math.max(1, (a[b | RHO]! * Math.abs(a[b | U]!) * dia) / mu)
        const quarter = Math.sqrt(Math.sqrt(reynolds))
        const booked = a[b | HEAT]! * since
        a[b | SUM_H] = a[b | SUM_H]! + booked
        a[b | SUM_HT] = a[b | SUM_HT]! + booked * t
        a[b | DRAG] = (2 / dia) * (Math.max(0.0791 / quarter, rough) + a[b | BEND]!)
        const h = ((laminar + heatC * quarter * quarter * quarter) * conduct) / dia
        a[b | HEAT] = (fourByCv * h) / dia
      }
    }
  }

  /**
   * Scratch of the duct in hand, 8 numbers a face: fluxes (mass, momentum, energy, fresh) and the mid-step pressure of the
   * cell to its right. One fixed array, which the compiler then knows for good.
   */
  const flux = new Float64Array(8 * (mostCells + 2))

  /** Advances every duct by dt with the boundary fluxes in `edge`. */
  function sweep(g: Ducts, dt: number): void {
    for (let d = 0; d < g.count; d++) {
      solveFaces(g, d, dt)
      finishCells(g, d, dt)
    }
  }

  /** products of differences below this count as flat, so that four sums can share one division without underflow */
  const tiny = 1e-60

  /**
   * Predicts every cell of a duct and solves every face, left to right: at face j cell j is predicted, then the face
   * between cells j-1 and j is solved. The right ghost goes through the same motions, which keeps the loop free of
   * special ends. Fluxes (times the face area, but for momentum) and mid-step pressures go to `flux`.
   * Quotients are paired (a/b and c/d from one 1/(bd)); this loop and the next one apart, on one interleaved array, measured
   * fastest of many arrangements.
   */
  function solveFaces(g: Ducts, d: number, dt: number): void {
    const a = g.cell
    const edge = g.edge
    const i0 = g.first[d]!
    const i1 = g.last[d]!
    const gamma = g.gamma
    const gm1 = gamma - 1
    const invGm1 = 1 / gm1
    const halfGm1 = 0.5 * gm1
    const k = dt / g.dx[d]!
    const sigma = 0.5 * k
    const eL = 8 * d

    let fastest = 0
    // right face state of cell j-1, kept from the face before
    let rL = 1
    let uL = 0
    let pL = 1
    let yL = 0
    // cell j and its left differences
    let r1 = a[(i0 << 4) | RHO]!
    let u1 = a[(i0 << 4) | U]!
    let p1 = a[(i0 << 4) | P]!
    let y1 = a[(i0 << 4) | Y]!
    let ar = r1 - a[((i0 - 1) << 4) | RHO]!
    let au = u1 - a[((i0 - 1) << 4) | U]!
    let ap = p1 - a[((i0 - 1) << 4) | P]!
    let ay = y1 - a[((i0 - 1) << 4) | Y]!

    for (let j = i0; j <= i1 + 1; j++) {
      const b = j << 4
      const f = (j - i0) << 3
      const bn = (j + 1) << 4
      // half van Leer slopes of cell j, ab/(a+b), nothing at an extremum; four quotients from one division
      const r2 = a[bn | RHO]!
      const u2 = a[bn | U]!
      const p2 = a[bn | P]!
      const y2 = a[bn | Y]!
      const br = r2 - r1
      const bu = u2 - u1
      const bp = p2 - p1
      const by = y2 - y1
      let nr = ar * br
      let nu = au * bu
      let np = ap * bp
      let ny = ay * by
      let sr = ar + br
      let su = au + bu
      let sp = ap + bp
      let sy = ay + by
      if (nr <= tiny) {
        nr = 0
        sr = 1
      }
      if (nu <= tiny) {
        nu = 0
        su = 1
      }
      if (np <= tiny) {
        np = 0
        sp = 1
      }
      if (ny <= tiny) {
        ny = 0
        sy = 1
      }
      const sru = sr * su
      const spy = sp * sy
      const q = 1 / (sru * spy)
      const iru = q * spy
      const ipy = q * sru
      const dr = nr * (su * iru)
      const du = nu * (sr * iru)
      const dp = np * (sy * ipy)
      const dy = ny * (sp * ipy)
      ar = br
      au = bu
      ap = bp
      ay = by

      // half step in time, then the two face states of cell j
      const uk = k * u1
      const stretch = sigma * (2 * du + u1 * a[b | TAPER]!)
      const rt = r1 - (uk * dr + r1 * stretch)
      const ut = u1 - (uk * du + k * dp * a[b | V]!)
      const yt = y1 - uk * dy
      let pMid1 = p1 - (uk * dp + gamma * p1 * stretch)
      let rR = rt - dr
      let uR = ut - du
      let pR = pMid1 - dp
      let yR = yt - dy
      let rLn = rt + dr
      let uLn = ut + du
      let pLn = pMid1 + dp
      let yLn = yt + dy
      if (rt <= Math.abs(dr) || pMid1 <= Math.abs(dp)) {
        // a face ran dry: first order in this cell
        rR = rLn = r1
        uR = uLn = u1
        pR = pLn = pMid1 = p1
        yR = yLn = y1
      }

      const areaF = a[b | FACE]!
      let mass = 0
      let mom = 0
      let ener = 0
      let fresh = 0
      if (j > i0 && j <= i1) {
        // HLLC: Roe averages for Einfeldt's bounds; the mean sound speed is written without enthalpies
        const rr = rL * rR
        const rm = rL + Math.sqrt(rr)
        const q = 1 / (rr * rm)
        const inv = gamma * q * rm
        const a2L = pL * rR * inv
        const a2R = pR * rL * inv
        const wL = q * rr * rL
        const jump = uR - uL
        const lean = wL * jump
        const uRoe = uR - lean
        const aRoe = Math.sqrt(a2R + wL * (a2L - a2R) + halfGm1 * lean * (jump - lean))
        const sLa = uL - Math.sqrt(a2L)
        const sLb = uRoe - aRoe
        // biome-ignore lint/complexity/useMathMinMax: Math.min and Math.max order signed zeros and NaN, which costs here
        const sL = sLa < sLb ? sLa : sLb
        const sRa = uR + Math.sqrt(a2R)
        const sRb = uRoe + aRoe
        // biome-ignore lint/complexity/useMathMinMax: Math.min and Math.max order signed zeros and NaN, which costs here
        const sR = sRa > sRb ? sRa : sRb
        if (-sL > fastest) fastest = -sL
        if (sR > fastest) fastest = sR
        const mL = rL * (sL - uL)
        const mR = rR * (sR - uR)
        // contact speed sM = num/den, den < 0; its side is known before the division
        const den = mL - mR
        const num = pR - pL + mL * uL - mR * uR
        if (num <= 0) {
          const e = pL * invGm1 + 0.5 * rL * uL * uL
          if (sL >= 0) {
            mass = rL * uL
            mom = mass * uL + pL
            ener = uL * (e + pL)
          } else {
            const rest = sL * den - num
            const both = num / (den * rest)
            const sM = both * rest
            const z = both * den // sM / (sL - sM)
            const pM = pL + mL * (sM - uL)
            mass = mL * z
            mom = mass * sM + pM
            ener = z * ((sL - uL) * e - pL * uL + pM * sL)
          }
          fresh = mass * yL
        } else {
          const e = pR * invGm1 + 0.5 * rR * uR * uR
          if (sR <= 0) {
            mass = rR * uR
            mom = mass * uR + pR
            ener = uR * (e + pR)
          } else {
            const rest = sR * den - num
            const both = num / (den * rest)
            const sM = both * rest
            const z = both * den
            const pM = pR + mR * (sM - uR)
            mass = mR * z
            mom = mass * sM + pM
            ener = z * ((sR - uR) * e - pR * uR + pM * sR)
          }
          fresh = mass * yR
        }
      } else {
        const e = j === i0 ? eL : eL + 4
        mass = edge[e]!
        mom = edge[e + 1]!
        ener = edge[e + 2]!
        fresh = edge[e + 3]!
      }
      flux[f | 0] = mass * areaF
      flux[f | 1] = mom
      flux[f | 2] = ener * areaF
      flux[f | 3] = fresh * areaF
      flux[f | 4] = pMid1
      r1 = r2
      u1 = u2
      p1 = p2
      y1 = y2
      rL = rLn
      uL = uLn
      pL = pLn
      yL = yLn
    }
    g.fastest[d] = fastest
  }

  /** New state of every cell from its fluxes, the area source, wall friction and wall heat. */
  function finishCells(g: Ducts, d: number, dt: number): void {
    const a = g.cell
    const i0 = g.first[d]!
    const i1 = g.last[d]!
    const viscous = g.viscous[d]! === 1
    const gm1 = g.gamma - 1
    const invGm1 = 1 / gm1
    const gasR = g.gasConstant
    const invCv = gm1 / gasR
    const k = dt / g.dx[d]!
    let mass0 = flux[0]!
    let mom0 = flux[1]!
    let ener0 = flux[2]!
    let fresh0 = flux[3]!
    let area0 = a[(i0 << 4) | FACE]!
    for (let j = i0; j <= i1; j++) {
      const b = j << 4
      const bn = (j + 1) << 4
      const f = (j - i0) << 3
      const fn = (j - i0 + 1) << 3
      const mass = flux[fn | 0]!
      const mom = flux[fn | 1]!
      const ener = flux[fn | 2]!
      const fresh = flux[fn | 3]!
      const pMid0 = flux[f | 4]!
      const areaF = a[bn | FACE]!
      // conservation; taking the cell's own mid-step pressure out of both momentum fluxes is the area source
      const r0 = a[b | RHO]!
      const u0 = a[b | U]!
      const p0 = a[b | P]!
      const y0 = a[b | Y]!
      const kA = k * a[b | INV_AREA]!
      const rn = r0 - kA * (mass - mass0)
      const m0 = r0 * u0
      const mn = m0 - kA * (areaF * (mom - pMid0) - area0 * (mom0 - pMid0))
      const en = p0 * invGm1 + 0.5 * u0 * m0 - kA * (ener - ener0)
      let vn = 0
      let un = 0
      let pn = 0
      if (viscous) {
        // friction u/(1 + F|u|) and wall heat exp(-x) ~ 1/(1 + x + x^2/2), both implicit, with 1/rho from one
        // division; the kinetic energy that friction takes stays in the gas as heat
        const c = a[b | HEAT]! * dt
        const slow = rn + a[b | DRAG]! * dt * Math.abs(mn)
        const square = rn * rn
        const cool = square + c * (rn + 0.5 * c)
        const both = slow * cool
        const q = 1 / (rn * both)
        vn = q * both
        un = mn * (q * rn) * cool
        const t = (en - 0.5 * rn * un * un) * vn * invCv
        const tn = a[b | WALL]! + (t - a[b | WALL]!) * square * (q * rn * slow)
        pn = rn * tn * gasR
      } else {
        vn = 1 / rn
        un = mn * vn
        pn = gm1 * (en - 0.5 * mn * un)
      }
      const yn = (r0 * y0 - kA * (fresh - fresh0)) * vn
      a[b | RHO] = rn
      a[b | U] = un
      a[b | P] = pn
      a[b | Y] = yn
      a[b | V] = vn
      area0 = areaF
      mass0 = mass
      mom0 = mom
      ener0 = ener
      fresh0 = fresh
    }
  }

  return { stableStep, nextStep, predictEnds, wrapGhosts, refreshWallRates, sweep }
}

export const { stableStep, nextStep, predictEnds, wrapGhosts, refreshWallRates, sweep } = makeKernel()
