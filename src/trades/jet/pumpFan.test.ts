import { expect, test } from 'vitest'
import { referenceJet } from './jetReference.ts'
import { PumpFan, withLeadingPitch } from './pumpFan.ts'
import { buildPumpMap, jetPoint } from './pumpMap.ts'

const referenceSpec = referenceJet()

test('a map read between sampled pitches gives thrust and torque as one sampled at that very pitch, to two thousandths', () => {
  const fan = new PumpFan(referenceSpec)
  for (const share of [0.41, 0.57, 0.7, 0.83, 0.96, 1.13, 1.31]) {
    const pitch = share * referenceSpec.rotor.tipDiameter
    const spec = withLeadingPitch(referenceSpec, pitch)
    const own = buildPumpMap(spec)
    for (const n of [50, 90, 115])
      for (const V of [0, 6]) {
        const read = jetPoint(fan.at(pitch), spec, n, V)
        const built = jetPoint(own, spec, n, V)
        expect(Math.abs(read.T - built.T), `${pitch} ${n} ${V}`).toBeLessThan(2e-3 * Math.max(built.T, 1))
        expect(Math.abs(read.F - built.F), `${pitch} ${n} ${V}`).toBeLessThan(2e-3 * Math.max(built.F, 50))
      }
  }
})

test('a sampled pitch is its own map, and what is sampled does not depend on the pitch of the spec', () => {
  const D = referenceSpec.rotor.tipDiameter
  const fan = new PumpFan(referenceSpec)
  const other = new PumpFan(withLeadingPitch(referenceSpec, 1.7 * referenceSpec.rotor.pitchLeading))
  const sampled = fan.sampled(0.4 * D, 1.5 * D)
  expect(sampled.length).toBeGreaterThan(5)
  expect(other.sampled(0.4 * D, 1.5 * D)).toEqual(sampled)
  expect(other.at(sampled[2]!).layers[0]!.torque.y[20]!).toBeCloseTo(
    fan.at(sampled[2]!).layers[0]!.torque.y[20]!,
    12,
  )
  expect(fan.at(sampled[2]!)).toBe(fan.at(sampled[2]!))
})

test('a blade that steepens keeps its growth at another pitch', () => {
  const steepens = {
    ...referenceSpec,
    rotor: { ...referenceSpec.rotor, pitchTrailing: 1.2 * referenceSpec.rotor.pitchLeading },
  }
  const { rotor } = withLeadingPitch(steepens, 0.08)
  expect(rotor.pitchLeading).toBe(0.08)
  expect(rotor.pitchTrailing / rotor.pitchLeading).toBeCloseTo(1.2, 12)
})
