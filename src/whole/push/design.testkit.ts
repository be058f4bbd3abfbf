import type { Range } from '../../base/answers/solved.ts'
import type { DesignAnswer, DesignOption, Does } from './designTypes.ts'

/** A made-up answer of the design search with smooth round numbers, so that figures are tested apart from the search. */
export function madeUpDesign(): DesignAnswer {
  const range = (value: number, part: number): Range => ({
    value,
    low: value * (1 - part),
    high: value * (1 + part),
  })
  const does = (pull: number, kmh: number, part: number): Does => ({
    pull: range(pull, part),
    topSpeed: range(kmh / 3.6, part),
    rotation: range(110, 0.04),
    draws: { pull: [pull], topSpeed: [kmh / 3.6] },
  })
  const now = { pitch: 0.1, blades: 3, nozzle: 0.05, ratio: 1, bore: 0.1 }
  const option = (
    id: DesignOption['id'],
    change: Partial<typeof now>,
    pull: number,
    kmh: number,
    worth: number,
  ): DesignOption => ({
    id,
    says: `option ${id}`,
    design: { ...now, ...change },
    values: {},
    changes: [],
    ...does(pull, kmh, 0.12),
    gain: { pull: range(pull - 320, 0.3), topSpeed: range((kmh - 28) / 3.6, 0.3) },
    worth,
    offered: worth > 0,
  })
  const pitch = [0.045, 0.055, 0.063, 0.068, 0.075, 0.085, 0.1, 0.12]
  const hill = (top: number, at: number) => pitch.map((p) => top * Math.exp(-((Math.log(p / at) / 0.6) ** 2)))
  return {
    final: true,
    wants: 'both',
    balances: 1200,
    draws: 16,
    now: { ...does(320, 28, 0.25), design: now },
    options: [
      option('together', { pitch: 0.083, blades: 2, nozzle: 0.066 }, 540, 37.5, 0.8),
      option('blades', { pitch: 0.066, blades: 2 }, 442, 40.5, 0.7),
      option('pitch', { pitch: 0.062 }, 434, 39.4, 0.65),
      option('nozzle', { nozzle: 0.064 }, 470, 35, 0.5),
      option('blade-cut', { blades: 2 }, 300, 27, -0.1),
    ],
    fitted: {
      design: { ...now, pitch: 0.062 },
      low: 0.056,
      high: 0.069,
      within: 0.06,
      power: { low: 2100, high: 3100 },
    },
    lines: [2, 3, 4].map((blades, i) => ({
      blades,
      nozzle: 0.05,
      pitch,
      pull: hill(445 - 12 * i, 0.066 - 0.002 * i),
      topSpeed: hill(11.4 - 0.3 * i, 0.07 - 0.002 * i),
    })),
  }
}
