import { expect, test } from 'vitest'
import { findUnit } from '../../base/units/convert.ts'
import { hullReckoners } from './dragReckoners.ts'

const degree = Math.PI / 180
const ask = (id: string, given: Record<string, number>, words: Record<string, string> = {}) => {
  const r = hullReckoners.find((x) => x.id === id)!
  const all: Record<string, number> = {}
  for (const p of r.inputs) if (p.assumed !== undefined) all[p.name] = p.assumed
  return r.reckon({ ...all, ...given }, words)
}

test('every port has a unit of its kind, and every reckoner a source', () => {
  for (const r of hullReckoners) {
    expect(r.sources.length).toBeGreaterThan(0)
    for (const p of [...r.inputs, ...r.outputs])
      if (p.kind !== 'choice') expect(findUnit(p.kind, p.unit), `${r.id}.${p.name}`).toBeDefined()
  }
})

test('outputs named are outputs given, all finite, in the middle of the range', () => {
  const given: Record<string, [Record<string, number>, Record<string, string>?]> = {
    water: [{}],
    ittc57: [{ speed: 5, length: 1.2 }],
    froude: [{ speed: 5, length: 2.3, mass: 190 }],
    'shallow-water': [{ depth: 0.6 }],
    'air-drag': [{ speed: 10 }, { stance: 'standing' }],
    'run-up': [{ mass: 180, thrust: 500, topSpeed: 12.649 }],
    'coast-down': [{ mass: 180, from: 6, to: 4, time: 2 }],
    planing: [{ speed: 8, mass: 190, beam: 0.7, centre: 0.95 }],
    'pre-planing': [{ speed: 3.5, mass: 190, length: 2.3, beam: 0.7, draft: 0.157 }],
    'hull-drag': [{ speed: 7, length: 2.4, chineBeam: 0.7, craftMass: 65, craftCentre: 0.95 }],
    porpoising: [{ speed: 8, mass: 190, beam: 0.7 }],
    spray: [{ speed: 8, beam: 0.7, deadrise: 15 * degree, trim: 4 * degree }],
  }
  expect(Object.keys(given).sort()).toEqual(hullReckoners.map((r) => r.id).sort())
  for (const r of hullReckoners) {
    const answer = ask(r.id, ...given[r.id]!)
    expect(Object.keys(answer).sort(), r.id).toEqual(r.outputs.map((p) => p.name).sort())
    for (const value of Object.values(answer)) expect(Number.isFinite(value), r.id).toBe(true)
  }
})

test('run-up without added mass is the tanh law', () => {
  const r = ask('run-up', { mass: 180, thrust: 500, topSpeed: Math.sqrt(160), part: 0.9, addedMass: 0 })
  expect(r.time).toBeCloseTo(6.704, 3)
  expect(r.distance).toBeCloseTo(47.83, 2)
})

test('contradictions are RangeErrors that name the input', () => {
  expect(() => ask('coast-down', { mass: 180, from: 3, to: 5, time: 2 })).toThrow(/^to: 5/)
  expect(() => ask('planing', { speed: 5, mass: 190, beam: 0.7, centre: 0.2 })).toThrow(
    /^centre: 0.2 m is too far aft/,
  )
  expect(() => ask('planing', { speed: 1, mass: 190, beam: 0.7, centre: 0.9 })).toThrow(/^speed/)
  expect(() => ask('pre-planing', { speed: 12, mass: 190, length: 2.3, beam: 0.7, draft: 0.157 })).toThrow(
    /^speed/,
  )
})
