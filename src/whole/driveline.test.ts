import { expect, test } from 'vitest'
import { amountsIn, printed } from '../base/answers/sentence.ts'
import { parseQuantity } from '../base/units/parse.ts'
import { type Craft, fieldAt, whatIf } from '../craft/index.ts'
import { builderChain, craftFrom, fourM5, problemsIn, twoInLine } from './driveline.testkit.ts'
import { lookAt } from './look.ts'

const looked = (craft: Craft) =>
  new Map(lookAt(craft, { ranges: false }).findings.map((f) => [f.id, f] as const))

const craft = craftFrom(twoInLine(builderChain))
const found = looked(craft)

/** A finding's changes made in the craft, as the app makes them. */
function changed(of: Craft, id: string): Craft {
  const changes = found.get(id)?.changes ?? []
  expect(changes.length).toBeGreaterThan(0)
  return whatIf(
    of,
    Object.fromEntries(
      changes.map(({ path, to }) => {
        const field = fieldAt(path)
        if (field?.type === 'flag') return [path, to === 'yes']
        if (field?.type !== 'quantity') return [path, to]
        const read = parseQuantity(to, field.kind, field.unit)
        return [path, 'value' in read ? read.value : Number.NaN]
      }),
    ),
  )
}

test('four M5 on a 40 mm circle in printed nylon at 2 N·m under two 60 cc singles slip within the first minutes', () => {
  const joint = found.get('driveline.joint.0')!
  expect(printed(joint.says)).toMatch(
    /4 M5 in printed nylon, slips (from the first turn|within the first minutes)/,
  )
  expect(joint.standing).toBe('stop')
  expect(joint.high!).toBeLessThan(1)
  expect(joint.low!).toBeLessThan(joint.value!)
})

test('thread-locker there is no help, and it is said why', () => {
  const locker = found.get('driveline.locker.0')!
  expect(locker.standing).toBe('watch')
  expect(printed(locker.says)).toMatch(/does not help/)
  const why = locker.because.map((b) => printed(b.says)).join(' ')
  expect(why).toMatch(/only between metals/)
  expect(why).toMatch(/cracks ABS, ASA, PC/)
  expect(printed(locker.act!)).toMatch(/nylon ring/)
})

test('sleeves and locking nuts, as advised, give a margin with a range when the craft is solved again with them', () => {
  const both = changed(changed(craft, 'driveline.joint.0'), 'driveline.joint.1')
  const again = looked(both)
  for (const id of ['driveline.joint.0', 'driveline.joint.1']) {
    const told = found.get(id)!.because.find((b) => printed(b.says).includes('built as advised'))!
    const promised = amountsIn(told.says)[0]!
    const joint = again.get(id)!
    expect(joint.value!, id).toBeGreaterThan(1)
    expect(joint.low!).toBeLessThan(joint.value!)
    expect(joint.high!).toBeGreaterThan(joint.value!)
    expect(joint.value!, 'what was promised').toBeCloseTo(promised.value, 6)
    expect(joint.low!).toBeCloseTo(promised.low!, 6)
    expect(joint.standing).not.toBe('stop')
  }
  expect(again.get('driveline.locker.0')).toBeUndefined()
  expect(both.shaft[1]).toMatchObject({ sleeves: true, locking: 'nut' })
})

test('more torque on plastic buys next to nothing: what is left after a day is what the plastic bears', () => {
  const more = looked(craftFrom(twoInLine(builderChain.map((l) => l.replace('2 N·m', '6 N·m')))))
  const after = (f: typeof found) => Number(f.get('driveline.joint.1')!.value)
  expect(after(more)).toBeLessThan(1.6 * after(found))
  expect(more.get('driveline.joint.0')!.standing).not.toBe('good')
})

test('a craft without a shaft is told once which six values to give, and is not nagged', () => {
  const none = looked(craftFrom(twoInLine([]).replace(/\nshaft:\n\s*$/, '\n')))
  const own = [...none.values()].filter((f) => f.id.startsWith('driveline.') && !f.id.endsWith('.headline'))
  expect(own.map((f) => [f.id, f.standing])).toEqual([['driveline.none', 'unknown']])
  expect(printed(own[0]!.says)).toMatch(/6 values/)
})

test('six values of a coupling are enough for an answer', () => {
  const least =
    '{ kind: coupling, bolts: M5, number: 4, circle: 40 mm, made: printed nylon, torque: 2 N·m, locking: none }'
  const six = looked(
    craftFrom(twoInLine(['{ kind: engine }', least, '{ kind: engine }', least, '{ kind: impeller }'])),
  )
  expect(six.get('driveline.joint.0')!.value).toBeGreaterThan(0)
})

test('a bolt size that does not exist is refused with its field, what may stand there and no number', () => {
  const problems = problemsIn(twoInLine(builderChain.map((l) => l.replace('bolts: M5', 'bolts: M7'))))
  expect(problems.join('\n')).toMatch(
    /shaft\.1\.bolts is "M7"; expected one of M3, M4, M5, M6, M8, M10, M12; "M\d+" is nearest/,
  )
})

test('a plastic nobody gave a strength for is refused and the nearest offered', () => {
  const problems = problemsIn(twoInLine(builderChain.map((l) => l.replace('printed nylon', 'PETGF'))))
  expect(problems.join('\n')).toMatch(/shaft\.1\.made is "PETGF"; expected one of .*"PETG" is nearest/)
})

test('a chain that misses its impeller is refused at its last link', () => {
  const problems = problemsIn(twoInLine(builderChain.slice(0, -1)))
  expect(problems.join('\n')).toMatch(/shaft\.4\.kind.*ends with a shaft.*the impeller as its last link/s)
})

test('engines side by side without a coupling, too many of them, or unknown by name are refused', () => {
  const faults = (links: readonly string[]) => problemsIn(twoInLine(links)).join('\n')
  expect(faults(['{ kind: engine }', '{ kind: engine }', fourM5(), '{ kind: impeller }'])).toMatch(
    /shaft\.1\.kind.*a coupling between them/s,
  )
  expect(faults(['{ kind: engine, name: rearr }', fourM5(), '{ kind: impeller }'])).toMatch(
    /"rear" is nearest/,
  )
  expect(
    faults([
      '{ kind: engine }',
      fourM5(),
      '{ kind: engine }',
      fourM5(),
      '{ kind: engine }',
      fourM5(),
      '{ kind: impeller }',
    ]),
  ).toMatch(/3 engines in the chain.*no more than the 2/s)
  expect(faults([fourM5(), '{ kind: impeller }'])).toMatch(/shaft\.0\.kind.*an engine as its first link/s)
})

test('locker on ABS cracks it, and that is what is told', () => {
  const abs = looked(craftFrom(twoInLine(builderChain.map((l) => l.replace('printed nylon', 'ABS')))))
  expect(printed(abs.get('driveline.locker.0')!.says)).toMatch(/cracks ABS/)
})
