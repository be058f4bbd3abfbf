import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { deafLimits } from '../../base/answers/limit.testkit.ts'
import type { LimitTable } from '../../base/answers/limit.ts'
import { inWords } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import { solveTrade } from '../trade.ts'
import { capstan, overBends } from './capstan.ts'
import { controlsLimits } from './controlsLimits.ts'
import { controlsTrade } from './controlsTrade.ts'
import { compressionTorque, cylinderOf, turnOver } from './starterPull.ts'
import { cablePull } from './throttleCable.ts'

/** The text of a demo with other controls, or none. */
function demoText(name: string, controls: string): string {
  const text = readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')
  const bare = `${text}\nend:`.replace(/^(cord|cable):[\s\S]*?(?=^\S)/gm, '').replace(/\nend:$/, '')
  return `${bare}\n${controls}\n`
}

function look(text: string) {
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(problems.map((p) => `${p.path}: ${p.found}, expected ${p.expected}`).join('; '))
  const solved = solveTrade(controlsTrade, craft, undefined)
  const judge = (limits: LimitTable = controlsLimits) => controlsTrade.judge(solved, limits)
  return { solved, judge, find: (id: string) => judge().find((f) => f.id === `controls.${id}`)! }
}

const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('cords and cables', () => {
  test('wraps one after the other multiply, and no wrap costs nothing', () => {
    fc.assert(
      fc.property(num(0, 0.5), num(0, 6), num(0, 6), (mu, a, b) => {
        expect(capstan(mu, a + b)).toBeCloseTo(capstan(mu, a) * capstan(mu, b), 9)
        expect(capstan(mu, 0)).toBe(1)
      }),
    )
    expect(() => capstan(0.2, -1)).toThrow(/wrap/)
  })
  test('a sheave costs less than an eye, an eye less than bare metal', () => {
    const at = (over: 'sheave' | 'plastic' | 'metal') =>
      overBends([{ angle: Math.PI / 2, over, across: 0.03 }])
    expect(at('sheave')).toBeLessThan(at('plastic'))
    expect(at('plastic')).toBeLessThan(at('metal'))
  })
  test('the finger pays for the friction that the spring loses', () => {
    fc.assert(
      fc.property(num(0, 8), num(0.05, 0.4), num(1, 60), num(0.5, 10), (bends, friction, spring, lever) => {
        const a = cablePull({ bends, friction, spring, lever, ratio: 1 })
        expect((a.finger - lever) / spring).toBeCloseTo(spring / (a.back * lever), 6)
        expect(cablePull({ bends, friction, spring: a.springWanted, lever, ratio: 1 }).back).toBeCloseTo(2, 6)
      }),
    )
    expect(() => cablePull({ bends: 1, friction: 0.1, spring: 0, lever: 1, ratio: 1 })).toThrow(/spring/)
  })
})

describe('the pull over compression', () => {
  const c = cylinderOf(60e-6, 6.8)
  test('the work of compression is the torque summed over the crank, and that of the gas by its own law', () => {
    const n = 1.3
    const steps = 4000
    let work = 0
    for (let i = 1; i < steps; i++)
      work += (compressionTorque(c, (c.exhaust * i) / steps, n) * c.exhaust) / steps
    // closed volume V, compressed to V/ratio, against the air behind the piston
    const area = (Math.PI / 4) * c.bore ** 2
    const r = c.stroke / 2
    const s = r * Math.sin(c.exhaust)
    const travel = r * (1 - Math.cos(c.exhaust)) + c.rod - Math.sqrt(c.rod ** 2 - s ** 2)
    const swept = area * travel
    const V = (swept * c.ratio) / (c.ratio - 1)
    const gas = (101325 * V * (c.ratio ** (n - 1) - 1)) / (n - 1) - 101325 * swept
    expect(work).toBeCloseTo(gas, 3)
  })
  test('it grows with volume and with compression; a bad measure is named', () => {
    expect(turnOver(cylinderOf(100e-6, 6.8)).peak).toBeGreaterThan(turnOver(c).peak)
    expect(turnOver(cylinderOf(60e-6, 8)).peak).toBeGreaterThan(turnOver(c).peak)
    expect(turnOver(c).peak).toBeGreaterThan(turnOver(c).mean)
    expect(() => turnOver({ ...c, rod: 0.01 })).toThrow(/rod/)
  })
})

test('two engines on one shaft take twice the pull of one, and the drum asked for brings it to what people manage', () => {
  const cord = (more: string) => `cord: { drum: 30 mm, thickness: 4 mm, length: 0.8 m${more} }`
  const both = look(demoText('teal', cord(''))).find('pull')
  const one = look(demoText('teal', cord(', turns: one engine'))).find('pull')
  expect(both.value).toBeCloseTo(2 * one.value!, 6)
  expect(both.standing).toBe('watch')
  const drum = both.changes![0]!.to
  const again = look(demoText('teal', cord('').replace('drum: 30 mm', `drum: ${drum}`))).find('pull')
  expect(again.value!).toBeLessThanOrEqual(controlsLimits.pull.value)
  expect(again.standing).toBe('good')
})

test('both engines stop on one kill cord, or the craft is not to go out; unsaid is unknown', () => {
  const kill = (word: string) => look(demoText('teal', `cable: { kill: ${word} }`)).find('kill')
  expect(kill('all engines').standing).toBe('good')
  expect(printed(kill('all engines').says)).toContain('all 2 engines')
  expect(kill('one engine').standing).toBe('stop')
  expect(kill('none').standing).toBe('stop')
  expect(look(demoText('teal', 'cable: { length: 2 m }')).find('kill').standing).toBe('unknown')
  const { changes } = kill('one engine')
  expect(changes).toEqual([{ path: 'cable.kill', from: 'one engine', to: 'all engines' }])
})

test('a throttle whose spring does not bring it back stops the craft, and the spring asked for shuts it', () => {
  const cable = (spring: string) =>
    `cable: { bends: 400 deg, liner: none, lever: 4 N, spring: ${spring}, kill: all engines }`
  const f = look(demoText('heron', cable('15 N'))).find('return')
  expect(f.standing).toBe('stop')
  const again = look(demoText('heron', cable(f.changes![0]!.to))).find('return')
  expect(again.standing).toBe('good')
})

test('a cord whose bends rub asks for sheaves, and with them it runs free', () => {
  const cord = (over: string) =>
    `cord: { drum: 60 mm, thickness: 4 mm, bends: [{ angle: 90 deg, over: ${over}, across: 40 mm }, { angle: 90 deg, over: ${over}, across: 40 mm }] }`
  const f = look(demoText('heron', cord('metal'))).find('bends')
  expect(f.standing).toBe('watch')
  expect(f.changes).toHaveLength(2)
  expect(look(demoText('heron', cord('sheave'))).find('bends').standing).toBe('good')
})

test('without both sections one unknown finding says what to give, and nothing is to watch', () => {
  const { judge } = look(demoText('heron', ''))
  expect(judge().map((f) => [f.id, f.standing])).toEqual([['controls.unknown', 'unknown']])
  expect(inWords(judge())[0]!.says).toContain('pull-cord and throttle cable')
})

test('the checklist is made of this craft', () => {
  const { solved } = look(demoText('teal', 'cord: { drum: 80 mm }\n\ncable: { kill: all engines }'))
  const [card] = controlsTrade.cards!(solved)
  const words = card!.steps.map((s) => printed(s)).join(' ')
  expect(words).toContain('all 2 engines die')
  expect(words).toContain('Both slides start to open')
  expect(words).toMatch(/about \d+ N/)
})

describe('bad input', () => {
  test('a cable with no spring is refused with the reason', () => {
    const { craft, problems } = readCraft(demoText('heron', 'cable: { spring: 0 N }'))
    expect(craft).toBeUndefined()
    expect(problems[0]).toMatchObject({ path: 'cable.spring' })
    expect(problems[0]!.expected).toContain('nothing shuts the throttle')
  })
  test('a cord too thick for its drum is refused', () => {
    const { craft, problems } = readCraft(demoText('heron', 'cord: { drum: 12 mm, thickness: 9 mm }'))
    expect(craft).toBeUndefined()
    expect(problems[0]).toMatchObject({ path: 'cord.thickness' })
  })
})

test('every limit, moved, changes what is said of some controls', () => {
  const texts = [
    demoText(
      'teal',
      'cord: { drum: 30 mm, thickness: 3 mm, fleet: 6 deg, bends: [{ angle: 180 deg, over: metal, across: 15 mm }] }\n\ncable: { bends: 320 deg, radius: 40 mm, liner: none, spring: 30 N, lever: 9 N, lever ratio: 1, free travel: 8 mm, kill: all engines, lanyard: 2 m }',
    ),
    demoText(
      'heron',
      'cord: { drum: 120 mm, pull: 0.5 m, thickness: 4 mm, length: 3 m }\n\ncable: { free travel: 0.2 mm, kill: all engines }',
    ),
    demoText('heron', 'cord: { drum: 60 mm, material: aramid, thickness: 3 mm }'),
    demoText('dabchick', 'cable: { through: air tube, thickness: 9 mm, kill: all engines }'),
    demoText('teal', 'cord: { drum: 12 mm, thickness: 4 mm, bends: [{ angle: 200 deg, over: metal }] }'),
  ]
  const judgements = texts.map((text) => {
    const { judge } = look(text)
    return (limits: LimitTable) => judge(limits)
  })
  expect(deafLimits(controlsLimits as LimitTable, judgements)).toEqual([])
})
