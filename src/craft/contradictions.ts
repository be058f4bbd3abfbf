import { formatQuantity } from '../base/units/format.ts'
import { inBay, inControls } from './bayContradictions.ts'
import { type Contradiction, failing, shown, type Test } from './contradiction.ts'
import { inFuel } from './fuelContradictions.ts'
import { inHull } from './hullContradictions.ts'
import type { Craft } from './schema/craftSchema.ts'
import { inShaft } from './shaftContradictions.ts'
import { inSharing } from './sharing.ts'
import { inTanks } from './tankContradictions.ts'

/** Everything in a craft that contradicts something else in it. */
export function contradictions(craft: Craft): Contradiction[] {
  return [
    ...inJet(craft),
    ...inHull(craft),
    ...inEngines(craft),
    ...inSharing(craft),
    ...onBoard(craft),
    ...inTanks(craft),
    ...inBay(craft),
    ...inControls(craft),
    ...inShaft(craft),
    ...inFuel(craft),
  ]
}

/** share of the bore past which a gap round the tips is more likely a slip of the decimal point (judgement, no source) */
const widestGap = 0.03

/**
 * Mean pressures, Pa, between which a small two-stroke gives its most power: 3 to 7 bar are usual (common practice, no source); twice and
 * half of that leave room for the odd one, and catch a decimal point that slipped.
 */
const peakPressure = { low: 1.5e5, high: 14e5, usualLow: 3e5, usualHigh: 7e5 } as const

const commonFactor = (a: number, b: number): number => (b === 0 ? a : commonFactor(b, a % b))

function inJet({ jet, hull }: Craft): Contradiction[] {
  const { rotor, nozzle, stator, intake, duct } = jet
  const bore = shown(rotor.bore, 'mm')
  return failing([
    [rotor.hub.value >= rotor.bore.value, rotor.hub, 'mm', `a hub smaller than the bore of ${bore}`],
    [rotor.hubOut.value >= rotor.bore.value, rotor.hubOut, 'mm', `a hub smaller than the bore of ${bore}`],
    [
      nozzle.bore.value > rotor.bore.value,
      nozzle.bore,
      'mm',
      `a nozzle no wider than the impeller bore of ${bore}`,
    ],
    [
      rotor.gap.value >= (rotor.bore.value - rotor.hub.value) / 4,
      rotor.gap,
      'mm',
      'a gap much smaller than the blade is tall',
    ],
    [
      rotor.gap.value > widestGap * rotor.bore.value,
      rotor.gap,
      'mm',
      `a gap of about 0.3 to 1 mm for a bore of ${bore}; look at it again`,
      'warning',
    ],
    [
      rotor.pitch.value < 0.4 * rotor.bore.value || rotor.pitch.value > 2 * rotor.bore.value,
      rotor.pitch,
      'mm',
      `a pitch of about 0.5 to 1.3 times the bore of ${bore}; look at it again`,
      'warning',
    ],
    [duct.shaft.value >= rotor.bore.value / 2, duct.shaft, 'mm', 'a shaft that leaves room for the water'],
    [
      intake.front.value > hull.length.value,
      intake.front,
      'm',
      `a place on the hull of ${shown(hull.length, 'm')}`,
    ],
    [
      stator.vanes.value > 0 && commonFactor(stator.vanes.value, rotor.blades.value) > 1,
      stator.vanes,
      '',
      `a number of vanes without a common factor with the ${rotor.blades.value} blades, or they pulse together`,
      'warning',
    ],
  ])
}

function inEngines({ engines }: Craft): Contradiction[] {
  return engines.flatMap((e, i) => {
    const tests: Test[] = []
    const points = 'curve' in e ? (e.curve ?? []) : []
    for (let k = 1; k < points.length; k++)
      tests.push([
        points[k]!.at.value <= points[k - 1]!.at.value,
        points[k]!.at,
        'rpm',
        `a speed above the point before at ${shown(points[k - 1]!.at, 'rpm')}`,
      ])
    if (e.kind === 'peak') tests.push(volumeTest(e))
    // a speed that is only taken as usual contradicts nothing
    if (e.kind === 'peak' && e.redline && e.powerAt.source !== 'assumed')
      tests.push([
        e.redline.value < e.powerAt.value,
        e.redline,
        'rpm',
        `a redline above the power peak at ${shown(e.powerAt, 'rpm')}`,
      ])
    if (e.kind === 'two-stroke') tests.push(...inTwoStroke(e))
    const found = failing(tests)
    if (e.kind === 'electric') {
      const constants = e.torquePerCurrent && e.mostCurrent && e.voltage
      if (!constants && !(e.mostTorque && e.freeSpeed))
        found.push({
          path: `engines.${i}`,
          found: 'an electric motor without enough numbers',
          expected: 'torque per current, most current and voltage; or most torque and free speed',
          severity: 'error',
        })
    }
    return found
  })
}

/** Power, its speed and volume go together within a factor: one of three that is ten times off is asked about. */
function volumeTest(e: Extract<Craft['engines'][number], { kind: 'peak' }>): Test {
  const work = e.power.value / e.powerAt.value
  const pressure = work / e.displacement.value
  const volume = (p: number) => formatQuantity(work / p, 'volume', 'cm³', 2)
  return [
    pressure < peakPressure.low || pressure > peakPressure.high,
    e.displacement,
    'cm³',
    `about ${volume(peakPressure.usualHigh)} to ${volume(peakPressure.usualLow)} for ${shown(e.power, 'kW')} at ${shown(e.powerAt, 'rpm')}; look at all three again`,
    'warning',
  ]
}

function inTwoStroke(e: Extract<Craft['engines'][number], { kind: 'two-stroke' }>): Test[] {
  const { exhaust, transfers } = e.ports
  const tests: Test[] = [
    [
      transfers.opens.value <= exhaust.opens.value,
      transfers.opens,
      'deg',
      `transfers that open after the exhaust at ${shown(exhaust.opens, 'deg')}`,
    ],
    [e.rod.value <= e.stroke.value, e.rod, 'mm', `a rod longer than the stroke of ${shown(e.stroke, 'mm')}`],
    [
      exhaust.width.value / exhaust.windows.value > 0.71 * e.bore.value,
      exhaust.width,
      'mm',
      'an exhaust window of at most 0.7 of the bore, or the ring catches',
      'warning',
    ],
    [
      exhaust.width.value + transfers.width.value > Math.PI * e.bore.value,
      transfers.width,
      'mm',
      `windows that fit round the bore of ${shown(e.bore, 'mm')}`,
    ],
    [
      2 * exhaust.cornerRadius.value > exhaust.width.value,
      exhaust.cornerRadius,
      'mm',
      'corners no rounder than half the width',
    ],
  ]
  const pipe = e.exhaust?.pipe ?? []
  for (let k = 1; k < pipe.length; k++) {
    const a = pipe[k - 1]!.to
    const b = pipe[k]!.from
    const far = Math.abs(a.value - b.value) > 0.15 * Math.max(a.value, b.value)
    tests.push([far, b, 'mm', `about the width the segment before ends with, ${shown(a, 'mm')}`, 'warning'])
  }
  return tests
}

function onBoard({ rider, hull, weights }: Craft): Contradiction[] {
  const length = shown(hull.length, 'm')
  const tests: Test[] = [
    [rider.position.value > hull.length.value, rider.position, 'm', `a place on the hull of ${length}`],
  ]
  for (const w of weights) {
    const [forward, port] = w.at
    const off = forward.value > 1.3 * hull.length.value || forward.value < -0.3 * hull.length.value
    tests.push([off, forward, 'm', `a place on or near the hull of ${length}`])
    tests.push([
      Math.abs(port.value) > hull.beam.value,
      port,
      'm',
      `a place on or near the hull, ${shown(hull.beam, 'm')} wide`,
    ])
  }
  return failing(tests)
}
