/**
 * The pump by itself: strips, radial equilibrium, losses.
 * Euler's work; simple radial equilibrium (S. L. Dixon, Fluid Mechanics and Thermodynamics of Turbomachinery, ch. 6)
 * written as an explicit equation for the axial velocity behind the rotor, derived; profile loss Lieblein 1959 (skin.ts);
 * secondary drag 0.018 C_L² (Howell, as in Dixon ch. 3); tip gap drag 0.7 C_L² τ/h (Lakshminarayana);
 * end walls by dissipation 0.002 ρ c³ (J. D. Denton, "Loss Mechanisms in Turbomachines", J. Turbomach. 115, 1993);
 * stall ranges R. H. Aungier, Axial-Flow Compressors (2003) ch. 6; diffusion limit 0.6, NASA SP-36 (1965).
 */
import { type Blades, derivativeAt } from './blades.ts'
import type { JetWater, PumpPoint, Stator } from './jetTypes.ts'
import { equivalentDiffusion, momentumThickness, plateFriction, smoothFriction } from './skin.ts'

const turn = 2 * Math.PI
const degree = Math.PI / 180

export interface PumpSetting {
  blades: Blades
  water: JetWater
  stator: Stator | null
  nozzleDiameter: number
}

/** Diffusion factor past which turning no longer gives head. */
const diffusionCap = 0.7

/**
 * Marches the axial velocity behind the rotor from the hub value `c0` to the tip; fills `b.cm` and gives the mean.
 * c dc/dr = (w_u/r) d(r c_u)/dr with c_u = a - slope c.
 */
function march(b: Blades, omega: number, c0: number, floor: number): number {
  const { r2, a, da, slope, db, cm, share, count } = b
  let c = Math.max(c0, floor)
  let sum = 0
  for (let i = 0; i < count; i++) {
    cm[i] = c
    sum += c * share[i]!
    if (i === count - 1) break
    const h = r2[i + 1]! - r2[i]!
    const k0 = rate(r2[i]!, omega, c, a[i]!, slope[i]!, da[i]!, db[i]!)
    const guess = Math.max(c + h * k0, floor)
    const k1 = rate(r2[i + 1]!, omega, guess, a[i + 1]!, slope[i + 1]!, da[i + 1]!, db[i + 1]!)
    c = Math.max(c + (h / 2) * (k0 + k1), floor)
  }
  return sum
}

function rate(r: number, omega: number, c: number, a: number, b: number, da: number, db: number): number {
  const cu = a - b * c
  const wu = omega * r - cu
  return ((wu / r) * (cu + r * (da - db * c))) / (c + wu * b)
}

/** Finds the hub velocity whose march passes the mean velocity `mean`; leaves it scaled exactly in `b.cm`. */
function equilibrium(b: Blades, omega: number, mean: number): boolean {
  const floor = 0.02 * mean
  let lo = floor
  let flo = march(b, omega, lo, floor) - mean
  let hi = 2 * mean
  let fhi = march(b, omega, hi, floor) - mean
  for (let k = 0; fhi < 0 && k < 40; k++) {
    hi *= 1.6
    fhi = march(b, omega, hi, floor) - mean
  }
  let sum = fhi + mean
  // even a dead hub passes too much: the hub would flow backwards; keep it dead and scale the rest down
  if (flo >= 0) sum = march(b, omega, floor, floor)
  // Illinois false position: the mean grows steadily with the hub value
  let done = false
  if (flo < 0 && fhi > 0) {
    for (let k = 0; k < 60; k++) {
      const x = (lo * fhi - hi * flo) / (fhi - flo)
      const f = march(b, omega, x, floor) - mean
      sum = f + mean
      if (Math.abs(f) < 1e-9 * mean) {
        done = true
        break
      }
      if (f * fhi < 0) {
        lo = hi
        flo = fhi
      } else flo /= 2
      hi = x
      fhi = f
      if (Math.abs(hi - lo) < 1e-13 * mean) break
    }
  }
  const scale = mean / sum
  for (let i = 0; i < b.count; i++) b.cm[i]! *= scale
  return done
}

/** Pump at flow `Q` (m³/s, > 0) and rotation `n` (rev/s, > 0). Fills in one `PumpPoint`. */
export function pumpAt(set: PumpSetting, n: number, Q: number): PumpPoint {
  const { blades: b, water, stator } = set
  const { rotor, model, count } = b
  const omega = turn * n
  const c1 = Q / b.areaIn
  const c2mean = Q / b.areaOut
  const kinematic = water.viscosity / water.density
  const gapShare = rotor.gap / b.span
  const keep = 1 - model.gapWork * gapShare

  for (let i = 0; i < count; i++)
    b.a[i] = b.turning[i]! * omega * b.r2[i]! + (1 - b.turning[i]!) * c2mean * b.slope[i]!
  derivativeAt(b.r2, b.a, b.da)
  const s = model.equilibrium
  const closed = s > 0 ? equilibrium(b, omega, c2mean) : true

  let work = 0
  let profile = 0
  let secondary = 0
  let gapDrag = 0
  let stall = 0
  let vane = 0
  let stalledShare = 0
  let tipStalled = false
  let diffusion = 0
  let worstDeq = 0
  let incidenceHub = 0
  let incidenceTip = 0
  let inception = 0
  let casing = 0
  let hubWall = 0
  let axialHub = 0
  let axialTip = 0
  for (let i = 0; i < count; i++) {
    const c2 = s > 0 ? (1 - s) * c2mean + s * b.cm[i]! : c2mean
    const flowShare = (c2 / c2mean) * b.share[i]!
    const u1 = omega * b.r1[i]!
    const u2 = omega * b.r2[i]!
    const solid = b.solidity[i]!
    // inlet, with the relative speed the rise of radius alone would leave
    const beta1 = Math.atan2(u1, c1)
    const incidence = beta1 - b.lambda1[i]!
    const w1 = Math.sqrt(c1 * c1 + u1 * u1 + (u2 * u2 - u1 * u1))
    // outflow by the lattice rule
    const cuFull = b.a[i]! - b.slope[i]! * c2
    let cu = cuFull
    let w2 = Math.hypot(c2, u2 - cu)
    let df = 1 - w2 / w1 + cu / (2 * solid * w1)
    const dfFull = df
    if (df > diffusionCap) {
      // stalled strip: the blades still push, but only the turning of the cap makes head
      let low = 0
      let high = cu
      for (let k = 0; k < 30; k++) {
        cu = (low + high) / 2
        w2 = Math.hypot(c2, u2 - cu)
        df = 1 - w2 / w1 + cu / (2 * solid * w1)
        if (df > diffusionCap) high = cu
        else low = cu
      }
      stall += flowShare * u2 * (cuFull - cu) * keep
    }
    const cMean = (c1 + c2) / 2
    const wuMean = (2 * u2 - cu) / 2
    const wMean = Math.hypot(cMean, wuMean)
    const deq = equivalentDiffusion(w1, w2, c1, cu, solid, incidence)
    // stall range of Aungier about zero incidence; the loss bucket's quadratic rise, then a straight line
    const beta1Deg = beta1 / degree
    const camberDeg = b.camber[i]! / degree
    const above = 10.3 + ((2.92 - beta1Deg / 15.6) * camberDeg) / 8.2
    const below = 9 - ((1 - (30 / beta1Deg) ** 0.48) * camberDeg) / 4.176
    const xi =
      incidence >= 0 ? incidence / degree / Math.max(above, 1) : incidence / degree / Math.max(below, 1)
    const rough = frictionRatio(b.chord[i]!, w1, kinematic, rotor.roughness)
    // positive incidence is already in the diffusion ratio; the bucket's other side is not
    const bucket = xi >= 0 ? 1 : xi > -2 ? 1 + xi * xi : 5 - 4 * (xi + 2)
    const theta = momentumThickness(deq) * rough * bucket
    const omegaP = 2 * theta * (solid / (c2 / w2)) * (w2 / w1) ** 2
    profile += flowShare * omegaP * 0.5 * w1 * w1
    // lift on the mean flow, then the drags that grow with its square
    const cl = (2 / solid) * (cu / wMean)
    const perDrag = (solid * c1 * c1 * wMean ** 3) / (2 * cMean ** 3)
    secondary += flowShare * perDrag * 0.018 * cl * cl
    gapDrag += flowShare * perDrag * 0.7 * cl * cl * gapShare
    work += flowShare * u2 * cuFull * keep
    // behind the rotor
    if (stator) {
      const absolute = c2 * c2 + cu * cu
      let loss = 0.08 * 0.5 * absolute + 0.5 * (0.1 * cu) ** 2
      if (stator.inletAngle !== undefined) {
        const off = (Math.atan2(cu, c2) - stator.inletAngle) / (12 * degree)
        loss += 0.5 * off * off * 0.08 * 0.5 * absolute
      }
      vane += flowShare * loss
    }
    const slow = w2 / w1
    if (dfFull > 0.6 || slow < 0.7 || xi > 1) {
      stalledShare += b.share[i]!
      if (i === count - 1) tipStalled = true
    }
    if (dfFull > diffusion) diffusion = dfFull
    if (deq > worstDeq) worstDeq = deq
    if (i === 0) {
      incidenceHub = incidence
      axialHub = c2
      hubWall = wMean ** 3
    }
    if (i === count - 1) {
      incidenceTip = incidence
      // suction peak of the diffusion ratio's bracket, as a pressure coefficient
      inception = ((deq * w2) / w1) ** 2 - 1
      axialTip = c2
      casing = Math.hypot(cMean, cu / 2) ** 3
    }
  }
  // the walls' dissipation coefficient is a turbulent one at the same Reynolds number, so only roughness raises it
  const wallSpeed = omega * b.r1[count - 1]!
  const wallChord = b.chord[count - 1]!
  const roughWall =
    plateFriction(wallChord, wallSpeed, kinematic, rotor.roughness) /
    smoothFriction((wallSpeed * wallChord) / kinematic)
  const hubD = rotor.hubDiameter
  const endWall =
    (0.002 * roughWall * Math.PI * b.axialLength * (casing * rotor.tipDiameter + hubWall * hubD)) / Q
  const before = work - profile - secondary - gapDrag - stall - endWall
  let spin = 0
  if (!stator) {
    // No vane takes the angular momentum work/ω out, and the nozzle is too short for its wall to do so. Rotation of that much
    // angular momentum within radius R holds at least (work/ω)²/(2R²), as if all of it ran along the wall; hollow swirling
    // jets come close to that.
    const radius = set.nozzleDiameter / 2
    spin = Math.min(0.5 * (work / omega / radius) ** 2, Math.max(0, before))
  }
  return {
    flow: Q,
    work,
    head: before - vane - spin,
    losses: { profile, secondary, gap: gapDrag, endWall, stall, stator: vane, swirl: spin },
    advance: c1 / (n * rotor.pitchTrailing),
    diffusion,
    stalledShare,
    tipStalled,
    incidenceHub,
    incidenceTip,
    inception,
    equivalentDiffusion: worstDeq,
    converged: closed,
    axialHub,
    axialTip,
  }
}

/** Friction against that of a smooth blade at Re 2.5e5, where the loss fit was made. */
function frictionRatio(chord: number, speed: number, kinematic: number, roughness: number): number {
  return plateFriction(chord, speed, kinematic, roughness) / smoothFriction(2.5e5)
}
