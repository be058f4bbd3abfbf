/** Room inside the hull that machinery and hands need, as boxes where no foam can go. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { boxOf, type Taken } from './boxes.ts'

/** kg/m³ of a box round an engine with its pipe, or round other gear, where no size is given (judgement, no source) */
const denseEngine = 900
const denseGear = 500

/** m to each side of a hatch's edge that a hand and a tool need under it, where no better is known (judgement, no source) */
const reach = 0.16

/** m round the jet's tube for its flanges */
const flange = 0.02

/** Weights with a size, engines and gear by a guessed one, the jet and its shaft, the reach under hatches. */
export function takenRoom(craft: Craft): Taken[] {
  const gear = craft.weights.flatMap((w): Taken[] => {
    const at = w.at.map((q) => q.value) as [number, number, number]
    const name = w.name.toLowerCase()
    if (w.size) {
      const size = w.size.map((q) => q.value) as [number, number, number]
      return [{ name: w.name, ...boxOf(at, size) }]
    }
    // a hull is round everything, a jet has its own measures, foam its own boxes
    if (/hull|deck|foam|jet|impeller|everything|rider/.test(name)) return []
    const side = Math.cbrt(w.mass.value / (/engine|motor/.test(name) ? denseEngine : denseGear))
    return [
      {
        name: `${w.name} (size guessed)`,
        ...boxOf(at, [1.25 * side, side, 0.8 * side]),
      },
    ]
  })
  const { rotor, intake, duct } = craft.jet
  const half = Math.max(rotor.bore.value, intake.width.value) / 2 + flange
  const engines = gear.filter((g) => /engine|motor/i.test(g.name))
  const nearest = Math.min(...engines.map((g) => g.low[0]), Infinity)
  const shaft = duct.shaft.value / 2 + flange
  const jet: Taken[] = [
    {
      name: 'jet',
      low: [0, -half, 0],
      high: [intake.front.value, half, rotor.bore.value + 2 * flange],
    },
    ...(nearest > intake.front.value && Number.isFinite(nearest)
      ? [
          {
            name: 'shaft',
            low: [intake.front.value, -shaft, 0] as const,
            high: [nearest, shaft, rotor.bore.value + 2 * flange] as const,
          },
        ]
      : []),
  ]
  const hatches = craft.openings
    .filter((o) => o.kind === 'hatch')
    .map((o): Taken => {
      const [x, y] = [o.at[0].value, o.at[1].value]
      return {
        name: `reach under ${o.name}`,
        low: [x - reach, y - reach, 0],
        high: [x + reach, y + reach, craft.hull.depth.value + 0.2],
      }
    })
  return [...gear, ...jet, ...hatches]
}
