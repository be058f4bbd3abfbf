/**
 * How an engine stopped, by its run-down slope and its last firings. Cut at speed, the line ends where it stood: without firing there
 * is nothing to follow, and a shaft against its pump halves its speed in about a third of a second (1/n grows evenly by pump torque
 * over inertia; free of load n falls evenly). For want of fuel it goes on firing while the speed sags. Limits in soundLimits.ts.
 */
import { inSeconds } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { atRpm, percentile } from './saySpeed.ts'
import { STEP } from './settings.ts'
import type { SoundLimits } from './soundLimits.ts'
import type { FrameTrack, Stretch } from './tracks.ts'

export interface StopReading {
  how: 'killed' | 'starved' | 'ran down'
  /** Hz: the speed it had kept, and that of the last firings heard */
  kept: number
  last: number
  /** s from leaving the kept speed to the last firing heard; 0 where it was cut at speed */
  takes: number
  /** how the speed fell, where one law fits clearly better; undefined where neither does */
  slope?: 'against a load' | 'free of load'
}

/** s before the end over which the kept speed is taken, s at the very end that are left out of it */
const BEFORE = 6
const END = 0.3
/** s at the end that tell a speed kept to the last, at idle as well */
const TAIL = 0.5
/** how much better, as a ratio of squared misses, one law must fit to be named */
const CLEARER = 2

/** Sum of squared misses of a straight line through v against the frame number, over the sum of squares about the mean; 0 … 1. */
function missOfLine(t: FrameTrack, from: number, to: number, of: (rate: number) => number): number {
  const n = to - from
  let [sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0]
  for (let k = 0; k < n; k++) {
    const y = of(t.rate[from + k]!)
    sx += k
    sy += y
    sxx += k * k
    sxy += k * y
    syy += y * y
  }
  const [vx, vy, c] = [sxx - (sx * sx) / n, syy - (sy * sy) / n, sxy - (sx * sy) / n]
  return vx > 0 && vy > 0 ? Math.max(0, 1 - (c * c) / (vx * vy)) : 1
}

function slopeOf(t: FrameTrack, from: number, to: number): StopReading['slope'] {
  if (to - from < 6) return undefined
  const loaded = missOfLine(t, from, to, (f) => 1 / f)
  const free = missOfLine(t, from, to, (f) => f)
  if (loaded * CLEARER < free) return 'against a load'
  return free * CLEARER < loaded ? 'free of load' : undefined
}

/** Reads the end of a sounding stretch of a line; `rpmPerHertz` as everywhere, rev/min per Hz of firing. */
export function readStop(
  t: FrameTrack,
  s: Stretch,
  rpmPerHertz: number,
  limits: Pick<SoundLimits, 'ranDown' | 'starveLeast' | 'idleMost'>,
): StopReading {
  const at = (seconds: number) => Math.max(s.from, s.to - Math.round(seconds / STEP))
  // gaps of a joined stretch are no speed
  const middle = (from: number, to: number) => {
    const v = t.rate.slice(from, Math.max(from + 1, to)).filter((f) => f > 0)
    return v.length > 0 ? percentile(v, 0.5) : t.rate[s.to - 1]!
  }
  const last = middle(at(0.1), s.to)
  const kept = middle(at(BEFORE), at(END))
  // the speed of the moment before counts where most of the time before was another: closed to idle, then cut
  const tail = middle(at(TAIL + 0.1), at(TAIL - 0.1))
  const idles = last * rpmPerHertz <= limits.idleMost.value && last > 0.97 * tail
  if (last > limits.ranDown.value * kept || idles)
    return { how: 'killed', kept: idles ? tail : kept, last, takes: 0 }
  let begins = s.to - 1
  while (begins > s.from && !(t.rate[begins - 1]! > 0.97 * kept)) begins--
  const takes = (s.to - begins) * STEP
  const slope = slopeOf(t, begins, s.to)
  return {
    how: takes >= limits.starveLeast.value ? 'starved' : 'ran down',
    kept,
    last,
    takes,
    ...(slope ? { slope } : {}),
  }
}

/** What is said of a stop, what it cannot have been, and the share of belief in how it stopped. */
export function stopSays(
  r: StopReading,
  rpmPerHertz: number,
): { says: Sentence; excludes?: string; part: number } {
  const [kept, last] = [atRpm(r.kept * rpmPerHertz), atRpm(r.last * rpmPerHertz)]
  const falls = r.slope ? `, falling as a shaft ${r.slope} does` : ''
  switch (r.how) {
    case 'killed':
      return {
        says: say`stops from ${last} (cut at speed)`,
        excludes: 'fuel running out, with which the speed sags for a second or more while it still fires',
        part: 1,
      }
    case 'starved':
      return {
        says: say`stops: it starves, from ${kept} down to ${last} in ${inSeconds(r.takes)} while it still fires${falls} (a throttle closed slowly until it stalls sounds the same)`,
        excludes: 'a kill switch or a lead that came off, which end the firing at speed',
        part: 0.8,
      }
    case 'ran down':
      return {
        says: say`stops from ${kept} (ran down to ${last} in ${inSeconds(r.takes)}${falls})`,
        part: 0.8,
      }
  }
}
