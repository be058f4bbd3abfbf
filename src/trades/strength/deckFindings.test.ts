import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { type Craft, readCraft } from '../../craft/index.ts'
import { strengthFindingsOf as strengthFindingsOfRaw } from './deckFindings.ts'
import { joinedWays } from './edgeFindings.ts'
import { strengthFromCraft } from './strengthFromCraft.ts'

// the tests read the words
const strengthFindingsOf = (...given: Parameters<typeof strengthFindingsOfRaw>) =>
  inWords(strengthFindingsOfRaw(...given))

const demo = (name: string) =>
  readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')
const strengthFindings = (craft: Craft) => strengthFindingsOf(strengthFromCraft(craft))
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
  test('every part of the deck question is among the findings: bays, rivets with sealant, popping, welds, frames, hatches, heat, a lighter build', () => {
    const ids = strengthFindings(craftOf(demo('heron'))).map((f) => f.id.replace(/\.\d+$/, ''))
    for (const id of ['bay', 'rivets', 'pops', 'joined', 'frame', 'hatch', 'lighter'])
      expect(ids).toContain(`deck.${id}`)
    expect(ids).toContain('heat')
  })
  test('a frame across stringers takes the load off the most loaded one, by the beam on springs', () => {
    const craft = craftOf(demo('heron'))
    const f = strengthFindings(craft).find((x) => x.id === 'deck.frame.2')!
    // by hand: 30 mm hats of 1.5 mm sheet; both beams give λa/2 = ½(K a³/4EI)^¼ with K = 48 EI/L³ per stringer
    const inputs = strengthFromCraft(craft)
    const bay = inputs.bays[2]!
    const s = bay.support as Extract<typeof bay.support, { kind: 'stringers' }>
    const skin = { a: bay.t * 30 * bay.t, z: 0.03 + bay.t / 2 }
    const z0 = (s.section.area * s.section.middle + skin.a * skin.z) / (s.section.area + skin.a)
    const I =
      s.section.inertia +
      s.section.area * (s.section.middle - z0) ** 2 +
      (30 * bay.t * bay.t ** 3) / 12 +
      skin.a * (skin.z - z0) ** 2
    const lambda = ((48 * I) / bay.length ** 3 / s.spacing / (4 * s.section.inertia)) ** 0.25
    const share = Math.max(1 / 3, (lambda * s.spacing) / 2)
    expect(f.says).toContain(`${Math.round(100 * share)} % on the most loaded`)
  })
  test('welding a hardened sheet all round softens the weakest bay, an annealed one it does not', () => {
    const hard = joinedWays(strengthFromCraft(craftOf(demo('heron'))))
    expect(hard[0]!.margin).toBeLessThan(hard[1]!.margin)
    const soft = joinedWays(
      strengthFromCraft(craftOf(demo('heron').replace('alloy: 5052-H32', 'alloy: 5052-O'))),
    )
    // the same strength either way, and held edges pull less deeply
    expect(soft[0]!.margin).toBeGreaterThanOrEqual(0.95 * soft[1]!.margin)
  })
  test('a lid’s hole gets its cut width back, half on each side', () => {
    const f = strengthFindings(craftOf(demo('heron'))).find((x) => x.id === 'deck.hatch.1')!
    // 320 mm of 2 mm sheet cut: 640 mm², half of it each side
    expect(f.says).toContain('320 mm² put back on each side, a doubler of 2.0 mm sheet 160 mm wide')
  })
})
