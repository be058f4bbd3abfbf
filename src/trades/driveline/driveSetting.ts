/** What the drive line is handed of the balance: plain numbers, made once a balance. */
import type { Range } from '../../base/answers/solved.ts'

/** A steady state the chain has to bear. */
export interface DriveState {
  name: 'tied up' | 'at top speed'
  /** of the engines, rev/s */
  rotation: number
  /** of all engines of the shaft together, at their cranks, N·m */
  torque: number
  /** of the jet, N */
  thrust: number
}

/** Highest pressure in a cylinder, Pa, over rotation, rev/s. */
export interface Peaks {
  readonly rotation: readonly number[]
  readonly pressure: readonly number[]
}

export interface DriveSetting {
  states: readonly DriveState[]
  /** rev/s at which an engine without load has no torque left */
  most: number
  /** rev/s at which the engines that are left drive the jet when one has died: dragged along, and not dragged */
  dragged?: Range
  alone?: Range
  /** by index of the engine, where its cycle was simulated */
  peaks: ReadonlyMap<number, Peaks>
  /** K of the air in the engine bay, where it was worked out */
  bay?: Range
}

interface Point {
  rotation: number
  engineTorque: number
  thrust: number
}

interface Left {
  stalls: boolean
  rotation: Range
}

/** As much of a solved balance as the drive line needs. */
export interface DriveBalance {
  tiedUp: Point
  top?: Point
  matching: { rotation: readonly number[] }
  oneDead?: Left & { place: string; withClutch?: Left }
}

type Solved = ReadonlyMap<number, { readonly peaks?: Peaks }>

/** The bay's air as it is known, or assumed for want of better. */
type Air = Range & { known: boolean }

const kept = new WeakMap<
  DriveBalance,
  { solved: Solved | undefined; air: Air | undefined; setting: DriveSetting }
>()

/** The setting of a balance, the same object as long as balance, simulated engines and the bay's air stay the same. */
export function driveSettingOf(balance: DriveBalance, solved?: Solved, air?: Air): DriveSetting {
  const known = kept.get(balance)
  if (known && known.solved === solved && known.air === air) return known.setting
  const setting = { ...settingOf(balance, solved), ...(air?.known ? { bay: air } : {}) }
  kept.set(balance, { solved, air, setting })
  return setting
}

function settingOf(
  { tiedUp, top, matching, oneDead }: DriveBalance,
  solved: Solved | undefined,
): DriveSetting {
  const state = (name: DriveState['name'], p: Point): DriveState => ({
    name,
    rotation: p.rotation,
    torque: p.engineTorque,
    thrust: p.thrust,
  })
  const states = [state('tied up', tiedUp), ...(top ? [state('at top speed', top)] : [])]
  const runs = (left: Left | undefined): left is Left =>
    left !== undefined && !left.stalls && Number.isFinite(left.rotation.value)
  const free = oneDead?.place === 'dragged' ? oneDead.withClutch : oneDead
  return {
    states: states.filter((s) => s.rotation > 0 && Number.isFinite(s.torque)),
    most: Math.max(...matching.rotation),
    peaks: new Map([...(solved ?? [])].flatMap(([i, c]) => (c.peaks ? [[i, c.peaks] as const] : []))),
    ...(oneDead?.place === 'dragged' && runs(oneDead) ? { dragged: oneDead.rotation } : {}),
    ...(runs(free) ? { alone: free.rotation } : {}),
  }
}

/** Peak pressure at a rotation by straight lines, Pa; undefined outside what was simulated. */
export function peakAt(peaks: Peaks | undefined, rotation: number): number | undefined {
  if (!peaks) return undefined
  const i = peaks.rotation.findIndex((n) => n >= rotation)
  const here = peaks.rotation[i]
  const high = peaks.pressure[i]
  if (here === undefined || high === undefined) return undefined
  const before = peaks.rotation[i - 1]
  const low = peaks.pressure[i - 1]
  if (before === undefined || low === undefined) return here === rotation ? high : undefined
  return low + ((high - low) * (rotation - before)) / (here - before)
}
