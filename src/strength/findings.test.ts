import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readCraft } from '../craft/index.ts'
import { strengthFindings, strengthFindingsOf } from './findings.ts'
import { strengthFromCraft } from './fromCraft.ts'

const demo = (name: string) => readFileSync(resolve(import.meta.dirname, `../../demo/${name}.yaml`), 'utf8')
const craftOf = (text: string) => readCraft(text).craft!

describe('strength findings', () => {
  for (const name of ['heron', 'teal'])
    test(`${name} gives a sentence and a reason for each bay and hot part, and promises nothing`, () => {
      const craft = craftOf(demo(name))
      const list = strengthFindings(craft)
      expect(list.filter((f) => f.id.startsWith('deck.bay.')).length).toBe(craft.deck.bays.length)
      expect(list.filter((f) => f.id.startsWith('heat.')).length).toBe(craft.hotParts.length)
      for (const f of list) {
        expect(f.question).toBe('strength')
        expect(f.says).not.toMatch(/NaN|Infinity|undefined/)
        expect([f.says, ...f.because.map((b) => b.says)].join(' ')).not.toMatch(
          /\b(is safe|complies|compliant)\b/i,
        )
        expect(f.because.length).toBeGreaterThan(0)
        if (f.low !== undefined) expect(f.low).toBeLessThanOrEqual(f.value! + 1e-9)
        if (f.high !== undefined) expect(f.high).toBeGreaterThanOrEqual(f.value! - 1e-9)
      }
    })
  test('a file without bays says what to measure', () => {
    const bare = craftOf(demo('heron').replace(/\ndeck:[\s\S]*?\nhot parts/, '\nhot parts'))
    expect(strengthFindings(bare)[0]).toMatchObject({ id: 'deck.none', standing: 'unknown' })
  })
  test('a bare pipe close to foam is a stop, with the fire caution beside it', () => {
    const hot = craftOf(demo('heron').replace('guard: shield', 'guard: bare'))
    const f = strengthFindings(hot).find((x) => x.id === 'heat.0')!
    expect(f.standing).toBe('stop')
    expect(f.because.some((b) => /Caution.*burns/.test(b.says))).toBe(true)
  })
  test('a heavier rider lowers every margin', () => {
    const light = strengthFindings(craftOf(demo('heron')))
    const heavy = strengthFindings(craftOf(demo('heron').replace('mass: 78 kg ±1', 'mass: 120 kg ±1')))
    for (const f of light.filter((x) => x.id.startsWith('deck.bay.')))
      expect(heavy.find((x) => x.id === f.id)!.value!).toBeLessThan(f.value!)
  })
  test('plain inputs give the same findings as the craft file', () => {
    const craft = craftOf(demo('teal'))
    expect(strengthFindingsOf(strengthFromCraft(craft))).toEqual(strengthFindings(craft))
  })
  test('every kind of bay comes over from the file', () => {
    const kinds = [
      ...strengthFromCraft(craftOf(demo('heron'))).bays,
      ...strengthFromCraft(craftOf(demo('teal'))).bays,
    ].map((b) => b.support.kind)
    expect(new Set(kinds)).toEqual(new Set(['alone', 'stringers', 'foam', 'sandwich']))
  })
})
