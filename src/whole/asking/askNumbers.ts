/** The ten numbers a stranger needs first, each with where it comes from. */
import {
  inCm3,
  inKg,
  inMetres,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
  inTimes,
  ranged,
} from '../../base/answers/amounts.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Craft, Quantity } from '../../craft/index.ts'
import { carriedOn } from '../../hull/aboard/aboard.ts'
import { comparable } from '../log/compare.ts'
import { type CraftLog, runsOf } from '../log/craftLog.ts'
import type { Balance } from '../push/balanceTypes.ts'

export interface AskNumber {
  what: string
  says: Sentence
  from: string
}

const fromOf = (...list: readonly Quantity[]): string => {
  const worst = ['assumed', 'guess', 'maker', 'measured'].find((s) => list.some((q) => q.source === s))
  return worst === 'maker' ? 'maker’s figure' : (worst ?? 'measured')
}

/** At most ten, the most telling first. */
export function askNumbers(craft: Craft, balance?: Balance, log?: CraftLog): AskNumber[] {
  const { rotor, nozzle } = craft.jet
  const last = log ? runsOf(log).at(-1) : undefined
  const read = last ? comparable(last) : {}
  const out: AskNumber[] = [enginesOf(craft), driveOf(craft)]
  out.push({
    what: 'impeller',
    says: say`${inMm(rotor.bore.value, 0.1)} across, ${inMm(rotor.pitch.value)} pitch, ${String(rotor.blades.value)} blades, hub ${inMm(rotor.hub.value)}`,
    from: fromOf(rotor.bore, rotor.pitch, rotor.blades, rotor.hub),
  })
  out.push({ what: 'tip gap', says: say`${inMm(rotor.gap.value, 0.05)}`, from: fromOf(rotor.gap) })
  out.push({ what: 'nozzle', says: say`${inMm(nozzle.bore.value, 0.1)}`, from: fromOf(nozzle.bore) })
  out.push(hullOf(craft))
  const both = (
    what: string,
    make: typeof inRpm,
    seen: number | undefined,
    model: Balance['pull'] | undefined,
  ) => {
    const predicted: Sentence | undefined =
      model && Number.isFinite(model.value) ? say`${ranged(make, model)} predicted` : undefined
    const off: Sentence =
      seen !== undefined && model && model.value > 0 ? say` (${inPercent(seen / model.value)} of it)` : ''
    if (seen === undefined && !predicted) return
    out.push({
      what,
      says:
        seen === undefined
          ? predicted!
          : predicted
            ? say`${make(seen)} read, ${predicted}${off}`
            : say`${make(seen)} read`,
      from: seen === undefined ? 'model' : 'read in the last run; model',
    })
  }
  both('engine speed, tied up, full throttle', inRpm, read['engine speed'], balance?.tiedUpRotation)
  both('pull, tied up, full throttle', inNewtons, read.pull, balance?.pull)
  both('top speed', inSpeed, read['top speed'], balance?.topSpeed)
  if (balance && Number.isFinite(balance.matching.powerPeakRotation))
    out.push({
      what: 'engines’ power peak',
      says: say`${inRpm(balance.matching.powerPeakRotation)}`,
      from: 'torque curve of the file',
    })
  return out.slice(0, 10)
}

function enginesOf(craft: Craft): AskNumber {
  const each = craft.engines.map((e): Sentence => {
    const kind = e.kind === 'electric' ? 'electric motor' : 'two-stroke'
    const size = 'displacement' in e ? say`${inCm3(e.displacement.value)} ` : ''
    const redline = e.redline ? say`, redline ${inRpm(e.redline.value)}` : ''
    return say`${size}${kind}${redline}${e.running ? '' : ' (off)'}`
  })
  const redlines = craft.engines.flatMap((e) => (e.redline ? [e.redline] : []))
  return {
    what: craft.engines.length > 1 ? 'engines' : 'engine',
    says: joined(each, '; '),
    from: redlines.length > 0 ? fromOf(...redlines) : 'craft file',
  }
}

function driveOf(craft: Craft): AskNumber {
  const { arrangement, ratio, clutch } = craft.drive
  const direct = Math.abs(ratio.value - 1) < 1e-3
  return {
    what: 'drive',
    says: say`${arrangement}, ${direct ? 'direct' : say`${inTimes(ratio.value)} engine turns an impeller turn`}, ${clutch === 'none' ? 'no clutch' : `${clutch} clutch`}`,
    from: fromOf(ratio),
  }
}

function hullOf(craft: Craft): AskNumber {
  const { length, beam } = craft.hull
  const all = carriedOn(craft)
  const mass = all.whole.mass + craft.rider.mass.value
  return {
    what: 'hull',
    says: say`${inMetres(length.value)} by ${inMetres(beam.value)}, ${inKg(mass)} with its rider and what is in its tanks`,
    from: fromOf(length, beam),
  }
}
