/**
 * The torque each part of the chain has to carry at its worst, by joint draws of everything doubtful (ISO/IEC Guide 98-3/Suppl. 1:2008). The
 * mean of the engines in front and what the cylinders' pulses leave of themselves between masses that swing against each other.
 */

import type { Range } from '../../base/answers/solved.ts'
import { percentile } from '../../base/numerics/effects.ts'
import { spreadPoint } from '../../base/numerics/lowDiscrepancy.ts'
import { peakAtCrank, type TurnOrders, turnOrders, turnOrdersOf } from './crankTorque.ts'
import type { Between, DriveChain, EngineMass } from './driveLinks.ts'
import { type DriveSetting, type DriveState, peakAt } from './driveSetting.ts'
import { sectionInertia } from './shaftStress.ts'
import { chainAnswer, chainFrequencies, chainWork } from './torsionChain.ts'

/** draws of all doubts, and the doubts a draw may hold: the chain's own first, then eight for each thing that carries torque */
export const drawCount = 128
const chainDoubts = 24
export const perPart = 8
const mostDoubts = 160
const seed = 11

let points: Float64Array[] | undefined
/** Draw `i`: where each doubt lies between its bounds, in [0, 1); the same for every craft. */
export function drawOf(i: number): Float64Array {
  points ??= Array.from({ length: drawCount }, (_, k) => spreadPoint(k, mostDoubts, seed))
  return points[i]!
}

/** Where the doubts of a part begin; parts beyond the last share their doubts with the first ones. */
export const doubtsAt = (part: number): number =>
  chainDoubts + perPart * (part % Math.floor((mostDoubts - chainDoubts) / perPart))

export const within = (r: Range, u: number): number => r.low + u * (r.high - r.low)

/** doubts of the models, as factors: mean torque, height of the pulses (simulated or constructed), moving masses, springs */
const doubts = {
  mean: { value: 1, low: 0.88, high: 1.12 },
  pulse: { value: 1, low: 0.75, high: 1.3 },
  pulseSimulated: { value: 1, low: 0.88, high: 1.14 },
  masses: { value: 1, low: 0.75, high: 1.25 },
  spring: { value: 1, low: 0.7, high: 1.3 },
  loss: { value: 0.05, low: 0.03, high: 0.09 },
  /** N·m/rad of a crank's end and of a rubber element on a circle of 40 mm, and of a toothed belt at 75 mm */
  stub: { value: 5000, low: 3000, high: 10_000 },
  rubber: { value: 600, low: 250, high: 1500 },
  belt: { value: 4000, low: 1500, high: 8000 },
  /** Pa: what friction takes of the gas torque, and what a dead engine drags */
  friction: 1.1e5,
  dead: { value: 1.0e5, low: 0.6e5, high: 1.6e5 },
} as const

/** Torque of the engines in front of each place, and what it swings to. */
export interface DrivePeaks {
  /** N·m by draw, at each place between two masses, on the crank's side of a belt */
  peak: readonly Float64Array[]
  /** the worst state of each place */
  state: DriveState
  /** mean torque through each place there */
  mean: readonly number[]
  /** largest torque at one cylinder's crank there, N·m, first running engine; undefined for motors */
  atCrank: number | undefined
  /** pressure it goes with, Pa, and whether that was simulated */
  pressure: number | undefined
  simulated: boolean
}

/** Stiffness of one place at the middle of its doubts and drawn, N·m/rad on the crank's side; u: two doubts. */
export function stiffnessOf(parts: readonly Between[], ratio: number, u1: number, u2: number): number {
  let give = 1 / within(doubts.stub, u1)
  let turned = 1
  for (const p of parts) {
    if (p.kind === 'belt') {
      give += ratio ** 2 / (within(doubts.belt, u2) * (p.pulley.value / 0.075) ** 2)
      turned = ratio
    } else if (p.kind === 'coupling' && p.rubber)
      give += turned ** 2 / (within(doubts.rubber, u2) * (p.radius.value / 0.02) ** 3)
    else if (p.kind === 'coupling') {
      // a flange ends about five millimetres outside its bolts
      const across = 2 * p.radius.value + 0.01
      const g = p.data.modulus / 2.7
      give += turned ** 2 * ((p.soft.value || 5e-3) / (g * 2 * sectionInertia(across)))
    } else if (p.kind === 'shaft') {
      const k = (p.metal.shear * 2 * sectionInertia(p.diameter.value, p.bore.value)) / p.length.value
      give += turned ** 2 / (k * within(doubts.spring, u2))
    }
  }
  return 1 / give
}

/** Torque of each running engine and of each dead one at a state, N·m. */
function sharesOf(engines: readonly EngineMass[], torque: number, dead: number): number[] {
  const swept = engines.reduce((sum, e) => sum + (e.running ? weightOf(e) : 0), 0)
  const drags = engines.map((e) => (e.running ? 0 : (-dead * e.displacement) / (2 * Math.PI)))
  const all = torque - drags.reduce((a, b) => a + b, 0)
  return engines.map((e, i) => (e.running ? (all * weightOf(e)) / swept : drags[i]!))
}

/** engines share the torque by their displacement; a motor counts as one of 60 cc */
const weightOf = (e: EngineMass): number => (e.displacement > 0 ? e.displacement : 60e-6)

const samples = 64
const cosines = Float64Array.from({ length: samples }, (_, i) => Math.cos((2 * Math.PI * i) / samples))
const sines = Float64Array.from({ length: samples }, (_, i) => Math.sin((2 * Math.PI * i) / samples))

/** Orders of each engine's torque at a state: its cylinders fire evenly spread. */
function ordersAt(engines: readonly EngineMass[], shares: readonly number[], s: DriveState, d: DriveSetting) {
  return engines.map((e, i): (TurnOrders & { simulated: boolean }) | undefined => {
    const share = shares[i]!
    if (!e.cylinder || !e.running) return undefined
    const each = (share + (doubts.friction * e.displacement) / (2 * Math.PI)) / e.cylinders
    const peak = peakAt(d.peaks.get(e.engine), s.rotation)
    return { ...turnOrdersOf(e.cylinder, each, peak), simulated: peak !== undefined }
  })
}

/** The peaks at one state. */
function peaksAt(chain: DriveChain, ratio: number, state: DriveState, setting: DriveSetting): DrivePeaks {
  const { engines, between } = chain
  const n = engines.length
  const shares = sharesOf(engines, state.torque, doubts.dead.value)
  const orders = ordersAt(engines, shares, state, setting)
  const peak = between.map(() => new Float64Array(drawCount))
  const work = chainWork(n + 1)
  const turn = 2 * Math.PI * state.rotation
  const re = new Float64Array(n + 1)
  const im = new Float64Array(n + 1)
  const springs = new Float64Array(2 * n * turnOrders)
  for (let i = 0; i < drawCount; i++) {
    const u = drawOf(i)
    const mean = within(doubts.mean, u[0]!)
    const masses = within(doubts.masses, u[1]!) * turn * turn
    const { inertia, stiffness } = drawnChain(chain, ratio, u)
    const loss = within(doubts.loss, u[2]!)
    // a pump's torque goes with the square of its speed
    const drag = (2 * state.torque) / turn
    for (let h = 1; h <= turnOrders; h++) {
      for (let k = 0; k < n; k++) {
        const o = orders[k]
        const e = engines[k]!
        re[k] = 0
        im[k] = 0
        if (!o || h % e.cylinders !== 0) continue
        const pulse = within(o.simulated ? doubts.pulseSimulated : doubts.pulse, u[16]!)
        const r = e.cylinders * (mean * pulse * o.gas[2 * h]! + masses * o.masses[2 * h]!)
        const m = e.cylinders * (mean * pulse * o.gas[2 * h + 1]! + masses * o.masses[2 * h + 1]!)
        // how the cranks stand to each other is as they happened to be bolted up
        const turned = k === 0 ? 0 : 2 * Math.PI * h * u[16 + (k % 8)]!
        re[k] = r * Math.cos(turned) - m * Math.sin(turned)
        im[k] = r * Math.sin(turned) + m * Math.cos(turned)
      }
      chainAnswer({ inertia, stiffness }, h * turn, { re, im }, loss, drag, work, springs, 2 * n * (h - 1))
    }
    let front = 0
    for (let k = 0; k < n; k++) {
      front += mean * shares[k]!
      peak[k]![i] = front + swing(springs, n, k)
    }
  }
  let front = 0
  const means = shares.map((t) => {
    front += t
    return front
  })
  const lead = orders.find((o) => o !== undefined)
  return {
    peak,
    state,
    mean: means,
    atCrank: lead && peakAtCrank(lead, state.rotation),
    pressure: lead?.peak,
    simulated: lead?.simulated ?? false,
  }
}

/** Largest value over a turn of what swings at place k. */
function swing(springs: Float64Array, n: number, k: number): number {
  let most = 0
  for (let s = 0; s < samples; s++) {
    let sum = 0
    for (let h = 1; h <= turnOrders; h++) {
      const at = 2 * n * (h - 1) + 2 * k
      const angle = (s * h) % samples
      sum += springs[at]! * cosines[angle]! - springs[at + 1]! * sines[angle]!
    }
    if (sum > most) most = sum
  }
  return most
}

/** The peaks of the state that asks most of the last place of the chain. */
export function drivePeaks(chain: DriveChain, ratio: number, setting: DriveSetting): DrivePeaks | undefined {
  const all = setting.states.map((s) => peaksAt(chain, ratio, s, setting))
  const worst = (p: DrivePeaks) => Math.max(...p.peak.map((x) => x.reduce((a, b) => a + b, 0)))
  return all.reduce<DrivePeaks | undefined>((a, b) => (a && worst(a) >= worst(b) ? a : b), undefined)
}

/** draws that the chain's own frequency is looked at in */
const frequencyDraws = 32

/** Lowest frequency at which the masses swing against each other, Hz on the crank's side, with the doubts of inertias and springs. */
export function lowestFrequency(chain: DriveChain, ratio: number): Range {
  const found = Float64Array.from({ length: frequencyDraws }, (_, i) => {
    const { inertia, stiffness } = drawnChain(chain, ratio, drawOf(i))
    return chainFrequencies({ inertia, stiffness })[0] ?? Number.NaN
  }).sort()
  return {
    value: percentile(found, 0.5),
    low: percentile(found, 0.025),
    high: percentile(found, 0.975),
  }
}

/** Masses and springs of one draw, on the crank's side. */
function drawnChain({ engines, impeller, between }: DriveChain, ratio: number, u: Float64Array) {
  return {
    inertia: [
      ...engines.map((e, k) => within(e.inertia, u[4 + (k % 4)]!)),
      within(impeller.inertia, u[3]!) / ratio ** 2,
    ],
    stiffness: between.map((parts, k) => stiffnessOf(parts, ratio, u[8 + (k % 4)]!, u[12 + (k % 4)]!)),
  }
}
