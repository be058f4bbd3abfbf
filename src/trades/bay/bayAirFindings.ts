/** What lies in the bay's air: suction by the engines, petrol vapour, and exhaust near the rider. */
import {
  inCm2,
  inCm3,
  inFlowSpeed,
  inKpa,
  inLitres,
  inMetres,
  inMinutes,
  inMm,
  inPercent,
  inSeconds,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import { brent } from '../../base/numerics/roots.ts'
import type { AirFan, AirOpening } from './bayFlow.ts'
import type { BayLimits } from './bayLimits.ts'
import { airOf, discharges, fuelOf, openingsOf } from './bayModel.ts'
import { type BayView, finding, method } from './bayView.ts'
import { monoxideAt } from './monoxideNear.ts'
import { airingTime, flammable, petrolToFlammable, ventilationArea } from './vapourInBay.ts'

/** steps that a builder cuts to, m² */
const cut = 5e-4
const upTo = (area: number) => cut * Math.ceil(area / cut - 1e-9)

/** Engines and their fans draw their air through the bay's openings: what that costs. */
export function suction(v: BayView, limits: BayLimits): Finding | undefined {
  const { bay, hottest, inputs } = v
  const { state, model, now } = hottest
  const burns = bay.engineAir === 'bay'
  const fanned = bay.cooling === 'ducted'
  if (!burns && !fanned) return undefined
  const under = Math.max(0, -now.flow.pressure)
  const area = model.openings.reduce((sum, o) => sum + o.area, 0)
  const bad = under > limits.suction.value
  const stop = burns && under > limits.suctionStop.value
  // pressure goes with the square of the flow through an area
  const wants = upTo(1.1 * area * Math.sqrt(under / limits.suction.value))
  const air = state.engines.reduce((sum, e, i) => sum + airOf(e, inputs.engines[i]?.burns ?? false), 0)
  return finding('suction', {
    says: say`What engines draw through the bay’s openings leaves it ${inKpa(under, 0.01)} under the air outside${burns ? say`, which costs about ${inPercent(under / inputs.pressure, 0.1)} of their power` : ''}.`,
    ...(bad ? { act: say`${inCm2(wants)} of openings in all instead of ${inCm2(area)}` } : {}),
    harm: stop ? 'before the water' : 'costs speed',
    value: under,
    unit: 'Pa',
    standing: stop ? 'stop' : bad ? 'watch' : 'good',
    because: [
      {
        says: burns
          ? say`${inLitres(air / 1.2, 0.1)} of air a second go into the carburettors from the bay`
          : 'the carburettors breathe through a tube of their own',
        link: 'bay.engine air',
      },
      ...(fanned
        ? [
            {
              says: say`the engines’ own fans blow ${inLitres(now.flow.fans.reduce((a, b) => a + b, 0) / 1.2, 1)} a second out of the bay`,
              link: 'bay.cooling',
            },
          ]
        : []),
      { says: say`${inCm2(area)} of openings and gaps`, link: 'bay.openings' },
    ],
    sources: [method],
  })
}

const timeSays = (t: number) => (t < 90 ? inSeconds(t, 5) : inMinutes(t, t < 600 ? 0.1 : 1))

const ventilation = '33 CFR 183.630 (natural ventilation), 46 CFR 182.460 (small spaces)'

/** Petrol vapour: how little fills the bay, where it leaves, airing before a start. */
export function vapour(v: BayView, limits: BayLimits): Finding | undefined {
  const { bay, inputs, doubts } = v
  if (!inputs.engines.some((e) => e.burns)) return undefined
  const V = bay.volume.value
  const T = inputs.air.value
  const { liquid } = petrolToFlammable(V, T, inputs.pressure)
  const density = inputs.pressure / (287.05 * T)
  const openings = openingsOf(bay, doubts, density, 0)
  const fans: AirFan[] = bay.fan
    ? [
        {
          free: bay.fan.flow.value,
          shut: bay.fan.pressure.value,
          blows: bay.fan.blows,
          height: bay.fan.height.value,
        },
      ]
    : []
  const third = limits.lowThird.value * bay.depth
  const low = bay.openings.filter((o) => o.height.value - 0.5 * o.tall.value <= third)
  const lowArea = low.reduce((sum, o) => sum + o.area.value, 0)
  const time = airingTime(V, openings, fans, T, inputs.pressure).value
  const shut = lowArea < limits.lowOpening.value && !(bay.fan && bay.fan.height.value <= third)
  const slow = time > limits.airing.value
  const wants = shut || slow ? lowWanted(v, openings, fans, limits) : undefined
  return finding('vapour', {
    says: say`${inCm3(liquid)} of petrol gone to vapour make the bay’s ${inLitres(V, 1)} flammable; it lies on the floor and ${
      Number.isFinite(time)
        ? say`leaves ${low[0] ? say`through ${low[0].name} ` : ''}in about ${timeSays(time)}`
        : 'does not leave by itself within an hour, not even with the lid off'
    }.`,
    ...(wants === undefined
      ? shut || slow
        ? {
            act: say`a fan of ${inLitres(Math.max(2e-3, V / 60))} a second that draws within ${inMm(third)} of the floor`,
          }
        : {}
      : {
          act: say`an opening of ${inCm2(wants)} within ${inMm(third)} of the floor and one as large under the lid`,
        }),
    harm: 'before the water',
    value: liquid,
    unit: 'm³',
    standing: shut || slow ? 'watch' : 'good',
    because: [
      {
        says: say`flammable from ${inPercent(flammable, 0.1)} of the air on; vapour weighs about three times as much as air`,
      },
      {
        says: inputs.tank
          ? say`${inputs.tank} stands in the same space`
          : 'no petrol tank stands in the bay; lines and carburettors do',
        link: inputs.tank ? 'tanks' : 'engines',
      },
      {
        says: say`to compare with: ${inCm2(ventilationArea(V), 0.1)} for each of two openings in 33 CFR 183.630, one of them in the lowest third; here ${inCm2(lowArea, 0.1)} low down`,
        link: 'bay.openings',
      },
      {
        says: say`before each start: lid off, nose in, and ${timeSays(Math.min(3600, Math.max(60, time)))} of airing after any smell of petrol`,
      },
    ],
    sources: [ventilation, 'Lower flammable limit of petrol: Fire Engineering 1988, Gasoline in brief'],
  })
}

/** Smallest low and high opening, m² each, that airs the bay in time; undefined where none does. */
function lowWanted(
  { bay, inputs }: BayView,
  openings: readonly AirOpening[],
  fans: readonly AirFan[],
  limits: BayLimits,
): number | undefined {
  const low = { height: 0.1 * bay.depth, tall: 0.1 * bay.depth, discharge: discharges.baffle, wind: 0 }
  for (let area = upTo(limits.lowOpening.value); area < 0.25 * bay.plan; area += cut) {
    const more = [...openings, { ...low, area }, { ...low, area, height: 0.9 * bay.depth }]
    if (
      airingTime(bay.volume.value, more, fans, inputs.air.value, inputs.pressure).value <= limits.airing.value
    )
      return area
  }
  return undefined
}

/** m/s of the breath of wind from astern that is looked at */
const breeze = 1
/** part of the full fuel that a two-stroke burns at idle: common practice */
const idleShare = 0.07
/** NIOSH ceiling, from memory */
const ceiling = 200e-6

/** Exhaust near the rider of a craft that lies still. */
export function fumes(v: BayView, limits: BayLimits): Finding | undefined {
  const { inputs } = v
  const { craft } = inputs
  const still = inputs.run.states.find((s) => s.speed === 0)
  if (!still || !inputs.engines.some((e) => e.burns)) return undefined
  const outlet = craft.openings.findIndex((o) => o.kind === 'exhaust outlet')
  const at = craft.openings[outlet]?.at
  const rider = craft.rider.position.value
  const distance = Math.max(0.3, at ? Math.hypot(rider - at[0].value, at[1].value) : rider)
  const exhaust = still.engines.reduce((sum, e, i) => {
    const burns = inputs.engines[i]?.burns ?? false
    return sum + airOf(e, burns) + fuelOf(e, burns)
  }, 0)
  const lambda = Math.min(...inputs.engines.filter((e) => e.burns).map((e) => e.lambda))
  const near = (d: number, spread = 0.2, of = exhaust) =>
    monoxideAt(of, lambda, d, breeze, inputs.air.value, inputs.pressure, spread)
  const full = near(distance)
  const idle = near(distance, 0.2, idleShare * exhaust)
  const far = brent((d) => near(d) - ceiling, 0.3, 200, { tolerance: 1e-3 })
  const bad = full > limits.monoxide.value
  return finding('monoxide', {
    says: say`Tied up at full throttle with a breath of wind from astern, about ${inPercent(full, 0.01)} of the air at the rider is carbon monoxide, at idle ${inPercent(idle, 0.001)}.`,
    ...(bad && far.converged
      ? {
          act: say`tie it up with its nose to the wind and stand ${inMetres(far.value, 0.1)} from the outlet`,
        }
      : {}),
    harm: 'before the water',
    value: full,
    low: Math.min(full, near(distance, 1 / 3)),
    high: Math.max(full, near(distance, 1 / 8)),
    unit: '1',
    standing: bad ? 'watch' : 'good',
    because: [
      {
        says: say`to compare with: ${inPercent(ceiling, 0.01)} at no moment (NIOSH ceiling), ${inPercent(limits.monoxide.value, 0.01)} at once dangerous to life; from memory`,
      },
      {
        says: say`${inMetres(distance, 0.1)} from the outlet to the rider${at ? '' : ', taken at the transom'}, ${inFlowSpeed(breeze)} of wind`,
        link: at ? `openings.${outlet}.at` : 'rider.position',
      },
      { says: 'an order of magnitude, no more: eddies behind a hull or a wall hold it longer' },
    ],
    sources: ['Plume from a point on the ground (F. Pasquill and F. B. Smith, 1983), from memory'],
  })
}
