import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import { partLimits } from './partLimits.ts'
import { barBending, bears, discBending, strengthFinding, thickEnough, tubeBending } from './partStrength.ts'
import { printedParts } from './printedParts.ts'
import { printsAnswer } from './printsAnswer.ts'
import { printsFromCraft } from './printsFromCraft.ts'

const length = fc.double({ min: 1e-3, max: 0.2, noNaN: true })
const force = fc.double({ min: 1, max: 3000, noNaN: true })

describe('laws', () => {
  test('twice the force is twice the stress, twice the thickness a quarter of it', () => {
    fc.assert(
      fc.property(force, length, length, length, (f, radius, patch, thick) => {
        const now = discBending(f, radius, patch, thick)
        expect(now).toBeGreaterThan(0)
        expect(discBending(2 * f, radius, patch, thick)).toBeCloseTo(2 * now, -Math.log10(now) + 6)
        expect(discBending(f, radius, patch, 2 * thick) / now).toBeCloseTo(0.25, 9)
        expect(barBending(f, radius, patch, 2 * thick) / barBending(f, radius, patch, thick)).toBeCloseTo(
          0.25,
          9,
        )
      }),
    )
  })
  test('a load spread over the whole disc bends it least, a point most', () => {
    fc.assert(
      fc.property(length, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (radius, part) => {
        expect(discBending(100, radius, part * radius, 5e-3)).toBeGreaterThan(
          discBending(100, radius, radius, 5e-3),
        )
      }),
    )
  })
  test('a full bar and a tube without a bore are the same: 32 F l / (π d³)', () => {
    expect(tubeBending(10, 0.1, 0.02, 0)).toBeCloseTo((32 * 10 * 0.1) / (Math.PI * 0.02 ** 3), 6)
    expect(() => tubeBending(10, 0.1, 0.02, 0.02)).toThrow(/bore/)
  })
  test('a disc under an even load: 3 (3 + ν) F / (8 π t²), Timoshenko art. 16', () => {
    expect(discBending(1000, 0.05, 0.05, 4e-3)).toBeCloseTo((3 * 3.38 * 1000) / (8 * Math.PI * 16e-6), 3)
  })
  test('what is thick enough bears its load, and half a millimetre less does not', () => {
    fc.assert(
      fc.property(force, length, (f, arm) => {
        const at = (t: number) => barBending(f, arm, 0.04, t)
        const borne = bears('PETG', { across: false, often: true }, partLimits)
        const t = thickEnough(at, borne, 5e-3, 60e-3)
        if (t < 60e-3) expect(at(t)).toBeLessThanOrEqual(borne)
        if (t > 5e-3) expect(at(t - 0.5e-3)).toBeGreaterThan(borne)
      }),
    )
  })
})

const heron = readFileSync('demo/heron.yaml', 'utf8')
const partsOf = (text: string) => {
  const craft = readCraft(text).craft!
  const inputs = printsFromCraft(craft)
  return printedParts(craft, { inputs, answer: printsAnswer(inputs) })
}

describe('parts are as thick as their load asks', () => {
  const hatch = (mass: string) =>
    heron
      .replace('78 kg ±1 (measured)', mass)
      .replace('clear: 300 mm (measured), shut: clamped lid', 'clear: 180 mm (measured), shut: screw lid')
  test('a heavier rider makes the lid of a hatch thicker', () => {
    const lid = (mass: string) => partsOf(hatch(mass)).find((p) => p.id.startsWith('hatch-'))!
    const [light, heavy] = [lid('50 kg'), lid('120 kg')]
    expect(heavy.solid!.values['top']).toBeGreaterThan(light.solid!.values['top'] as number)
    expect(light.findings.find((f) => f.id.endsWith('.strength'))!.standing).toBe('good')
  })
  test('where no print is enough, what to do instead is an order', () => {
    const load = {
      by: 'a ton on it',
      stress: 90e6,
      across: false,
      often: true,
      link: 'rider.mass',
      instead: 'put a plate of aluminium under the lid',
    }
    const said = strengthFinding({ id: 'x', title: 'Lid', material: 'PETG' }, load, partLimits)
    expect(said.standing).toBe('watch')
    expect(said.act).toBe('put a plate of aluminium under the lid')
    // a stronger plastic is offered where it is enough, and then it is
    const weaker = strengthFinding(
      { id: 'x', title: 'Lid', material: 'HDPE' },
      { ...load, stress: 4.5e6 },
      partLimits,
    )
    const plastic = /^print it of (.*)$/.exec(printed(weaker.act!))![1]!
    expect(bears(plastic as never, load, partLimits)).toBeGreaterThanOrEqual(4.5e6)
  })
  test('brackets, barbs and cradles stand in the list of a craft that wants them', () => {
    const text = heron
      .replace(/^deck:/m, 'mounts: { number: 4, mass: 12 kg }\n\ndeck:')
      .replace(
        /- \{ kind: box, name: fuel tank[^\n]*/,
        '- { kind: lying cylinder, name: fuel tank, holds: petrol and oil, foot: [1.45 m, 0 m, 0.09 m], diameter: 200 mm, length: 300 mm }',
      )
    const ids = partsOf(text).map((p) => p.id)
    for (const id of ['engine-bracket', 'mount-cup', 'cradle-1', 'hose-barb']) expect(ids).toContain(id)
    expect(partsOf(heron).map((p) => p.id)).not.toContain('cradle-1')
  })
})
