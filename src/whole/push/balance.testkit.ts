import type { Range } from '../../base/answers/solved.ts'
import type { Balance } from './balanceTypes.ts'

/** A made-up balance with smooth round numbers, so that figures and sentences are tested apart from the solver. */
export function madeUpBalance(share = 1): Balance {
  const range = (value: number, part = 0.08): Range => ({
    value,
    low: value * (1 - part),
    high: value * (1 + part),
  })
  const rotation = Array.from({ length: 60 }, (_, i) => 20 + 2.4 * i)
  const engineTorque = rotation.map(
    (n) => 5 + 5.5 * Math.exp(-(((n - 116) / 26) ** 2)) - (n > 135 ? (n - 135) * 0.3 : 0),
  )
  const takes = (k: number) => rotation.map((n) => k * share * 10.2 * (n / 112) ** 2)
  const speed = Array.from({ length: 34 }, (_, i) => 12 * (i / 33) ** 1.3)
  const drag = speed.map((v) => 130 * Math.exp(-(((v - 4.2) / 1.5) ** 2)) + 2.4 * v * v)
  const thrust = speed.map((v) => (v > 11.5 ? Number.NaN : (420 - 17 * v) / share))
  const time = Array.from({ length: 50 }, (_, i) => i * 0.2)
  const point = (v: number, n: number) => ({
    speed: v,
    rotation: n,
    impellerRotation: n,
    thrust: v === 0 ? 420 / share : 252,
    torque: 10,
    engineTorque: 10.4,
    flow: 0.04,
    power: 7000,
    pumpEfficiency: 0.72,
    ofPowerPeak: n / 118,
    flags: [],
  })
  const change = (id: string, says: string, kmh: number, pull: number) => ({
    id,
    says,
    path: 'jet.rotor.pitch',
    from: 0.118,
    to: 0.108,
    also: {},
    rotation: range(2),
    pull: { value: pull, low: pull - 6, high: pull + 6 },
    topSpeed: { value: kmh / 3.6, low: (kmh - 0.7) / 3.6, high: (kmh + 0.7) / 3.6 },
  })
  return {
    curve: {
      speed,
      rpm: speed.map(() => 6900),
      thrust,
      drag,
      dragLow: drag.map((d) => d * 0.85),
      dragHigh: drag.map((d) => d * 1.15),
      dragRiderStill: drag.map((d, i) => d * (1 + 0.25 * Math.exp(-(((speed[i]! - 4.2) / 1.5) ** 2)))),
      torque: speed.map(() => 10),
      engineTorque: speed.map(() => 10.4),
      flow: speed.map(() => 0.04),
      trim: speed.map(() => 0.07),
      riderAt: speed.map(() => 1),
      cavitating: speed.map((v) => v > 0.6 && v < 2),
    },
    tiedUp: point(0, 114 / share),
    tiedUpRoots: [
      { rotation: 114 / share, torque: 10.4, stable: true, reachable: true },
      { rotation: 70, torque: 4, stable: false, reachable: false },
      { rotation: 46, torque: 2, stable: true, reachable: false },
    ],
    top: point(9.9 / share, 120),
    topSpeed: range(9.9 / share),
    pull: range(420 / share),
    tiedUpTorque: { value: 9, low: 8, high: 10 },
    tiedUpRotation: range(114 / share, 0.03),
    humpMargin: range(1.96),
    timeToPlane: range(2.6 * share),
    limitedBy: { code: 'engine', says: 'Nearly all of the engines’ best power is in use.' },
    matching: {
      rotation,
      engineTorque,
      engineLow: engineTorque.map((t) => t * 0.92),
      engineHigh: engineTorque.map((t) => t * 1.08),
      impellerTiedUp: takes(1),
      impellerAtTop: takes(0.93),
      impellerAtBestPitch: takes(0.88 / share),
      powerPeakRotation: 118,
      bogRatio: 0.98,
      bogRotation: 74,
      held: true,
      comesOnPipe: false,
    },
    run: {
      time,
      speed: time.map((t) => (9.9 / share) * (1 - Math.exp(-t / 2.2))),
      distance: time.map((t) => t * t),
      timeToPlane: 2.6 * share,
      timeTo95: 6.6 * share,
      stuck: false,
    },
    hump: { speed: 4.4, drag: 176, thrust: 345, margin: 1.96 },
    verdict: {
      code: 'too steep',
      says: 'The impeller is likely too steep for these engines.',
      judged: 'tied up',
      designSpeed: 0,
      rotation: range(114 / share, 0.03),
      bestPitch: range(0.104),
      pitchNow: 0.118,
    },
    changes: [
      change('pitch-best', 'pitch 104 mm instead of 118 mm', 1.9, 14),
      change('smooth', 'blades sanded and sealed, 12 to 3 µm', 0.8, 22),
      change('ratio-less', '10 % less reduction, ratio 1.13', -2.7, -60),
      {
        ...change('lost', 'a change without an answer', 0, 0),
        topSpeed: { value: Number.NaN, low: Number.NaN, high: Number.NaN },
      },
    ],
    drivers: [
      {
        path: 'drive.efficiency',
        says: 'drive.efficiency',
        source: 'guess',
        rotation: 2,
        pull: 30,
        topSpeed: 0.2,
        share: { rotation: 0.4, pull: 0.4, topSpeed: 0.4 },
      },
    ],
    explained: { rotation: 0.95, pull: 0.95, topSpeed: 0.95 },
    ranged: true,
    flags: [],
  }
}
