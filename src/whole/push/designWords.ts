/** Options and bands of the design search in words. */
import { inKw, inMm, inPercent, inTimes } from '../../base/answers/amounts.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import type { Design } from './design.ts'
import type { DesignOption, PitchBand } from './designTypes.ts'

const blades = (n: number) => `${n} blade${n === 1 ? '' : 's'}`

/** What an option is, going on from "fit" or standing before its gains. */
export function optionSays(id: DesignOption['id'], now: Design, to: Design): Sentence {
  const ratio = inTimes(to.ratio)
  switch (id) {
    case 'pitch':
      return say`an impeller of ${inMm(to.pitch)} pitch instead of ${inMm(now.pitch)}, ${blades(to.blades)} as now`
    case 'blades':
      return say`an impeller of ${blades(to.blades)} instead of ${String(now.blades)}, ${inMm(to.pitch)} pitch`
    case 'blade-cut':
      // taking one of three leaves the rotor out of balance; of four the opposite two may go
      return say`the same blades, ${String(to.blades)} instead of ${String(now.blades)}, evenly spaced: print it so, as one cut off leaves the rotor out of balance`
    case 'nozzle':
      return say`a nozzle of ${inMm(to.nozzle)} instead of ${inMm(now.nozzle)}, the impeller as it is`
    case 'ratio':
      return say`a ratio of ${ratio} instead of ${inTimes(now.ratio)}, impeller and nozzle as they are`
    case 'together': {
      const parts: Sentence[] = [say`an impeller of ${inMm(to.pitch)} pitch with ${blades(to.blades)}`]
      if (to.bore !== now.bore) parts.push(say`in a ring of ${inMm(to.bore)}`)
      if (to.nozzle !== now.nozzle) parts.push(say`a nozzle of ${inMm(to.nozzle)}`)
      if (to.ratio !== now.ratio) parts.push(say`a ratio of ${ratio}`)
      return joined(parts, ' and ')
    }
  }
}

/** "65 to 70 mm stays within 4 % of the best whether the engines give 2.1 or 3.1 kW each" */
export function bandSays(band: PitchBand, engines: number): Sentence {
  const one = Math.round(band.low * 1000) === Math.round(band.high * 1000)
  const span: Sentence = one
    ? say`${inMm(band.design.pitch)} of pitch`
    : say`${inMm(band.low)} to ${inMm(band.high)} of pitch`
  const within = inPercent(Math.ceil(100 * band.within) / 100)
  if (!band.power) return say`${span} stays within ${within} of the best`
  const each = engines > 1 ? ' each' : ''
  const give = engines > 1 ? 'engines give' : 'engine gives'
  return say`${span} stays within ${within} of the best whether the ${give} ${inKw(band.power.low)} or ${inKw(band.power.high)}${each}`
}
