import { expect, test } from 'vitest'
import { compareBlades } from './advice.ts'
import { bestReduction, choosePitch, withPitch } from './chooseBlades.ts'
import { solveJet } from './jet.ts'
import { referenceJet } from './jetReference.ts'
import { cavitationKnee } from './knee.ts'
import { buildPumpMap } from './pumpMap.ts'

/** constant power about its peak, at the shaft */
const load = (power: number, target: number) => ({ torque: (n: number) => power / (2 * Math.PI * n), target })

test('the chosen pitch takes exactly the torque the drive gives at its target rotation', () => {
  for (const V of [0, 6, 10]) {
    const drive = load(10e3, 95)
    const found = choosePitch(referenceJet(), drive, V, 0.05, 0.18)
    expect(found.converged).toBe(true)
    const { pitch } = found.value
    expect(solveJet(withPitch(referenceJet(), pitch), 95, V).T).toBeCloseTo(drive.torque(95), 4)
  }
})

test('more power asks for more pitch; a growing pitch keeps its growth', () => {
  const pitch = (kw: number) => choosePitch(referenceJet(), load(kw * 1e3, 95), 5, 0.05, 0.18).value.pitch
  expect(pitch(9)).toBeLessThan(pitch(11))
  const grown = referenceJet()
  grown.rotor.pitchTrailing = 1.2 * grown.rotor.pitchLeading
  const r = withPitch(grown, 0.09).rotor
  expect(r.pitchTrailing / r.pitchLeading).toBeCloseTo(1.2, 12)
})

test('a drive no pitch in the range can load is not converged, never a number', () => {
  const found = choosePitch(referenceJet(), load(80e3, 95), 5, 0.05, 0.18)
  expect(found.converged).toBe(false)
  expect(found.value.pitch).toBeNaN()
})

test('reduction: the jet then turns at the rotation where k n² takes the peak power', () => {
  const k = 20 / 100 ** 2
  const ratio = bestReduction(150, 15e3, 0.97, k)
  const n = 150 / ratio
  expect(2 * Math.PI * k * n ** 3).toBeCloseTo(15e3 * 0.97, 6)
})

test('blade numbers compared at the same load each take the same torque', () => {
  const at = solveJet(referenceJet(), 95, 6)
  for (const c of compareBlades(referenceJet(), 95, at.T, 6, [2, 4])) {
    const spec = withPitch(
      { ...referenceJet(), rotor: { ...referenceJet().rotor, blades: c.blades } },
      c.pitch,
    )
    expect(solveJet(spec, 95, 6).T).toBeCloseTo(at.T, 4)
  }
})

test('the knee comes later under way than tied up, and onset comes before choking', () => {
  const spec = referenceJet()
  const map = buildPumpMap(spec)
  const still = cavitationKnee(map, spec, 0, 200)
  const way = cavitationKnee(map, spec, 8, 200)
  expect(still.onset).toBeLessThan(still.choke)
  expect(way.choke).toBeGreaterThan(still.choke)
  expect(still.choke * 60).toBeGreaterThan(7300)
  expect(still.choke * 60).toBeLessThan(7700)
  expect(cavitationKnee(map, spec, 0, 60).onset).toBeNaN()
})
