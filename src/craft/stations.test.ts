import { describe, expect, test } from 'vitest'
import { formatProblem } from './problem.ts'
import { readCraft } from './read.ts'

const station = (at: number, points: string) => `    - { at: ${at} m, points: [${points}] }`
const good = '[0 mm, 0 mm], [340 mm, 30 mm], [400 mm, 240 mm], [0 mm, 240 mm]'
const said = (middle: string, hull = 'length: 2.4 m, beam: 0.8 m', at = 1.2) => {
  const [length, beam] = hull.split(', ')
  const text = `wakewright: 1
name: a craft with stations
engines:
  - { kind: peak, displacement: 60 cm³, power: 4 kW, power at: 7500 rpm }
jet:
  rotor: { bore: 105 mm, pitch: 95 mm }
  nozzle: { bore: 58 mm }
hull:
  ${length}
  ${beam}
  stations:
${station(0, good)}
${station(at, middle)}
${station(2.4, good)}
`
  return readCraft(text).problems.map(formatProblem).join('\n')
}

describe('a station table', () => {
  test('from the keel out and up, stations in order, reads without a word', () => {
    expect(said(good)).toBe('')
  })
  test('out of order names the station, where it stands and the one before', () => {
    expect(said(good, undefined, -0.4)).toMatch(
      /hull\.stations\.1\.at is -0\.4 m; expected a station forward of the one before at 0 m/,
    )
  })
  test('with a half-breadth below 0 says that one side is enough', () => {
    expect(said(good.replace('[340 mm', '[-340 mm'))).toMatch(
      /stations\.1\.points\.1\.0 is -340 mm; expected a half-breadth of 0 or more/,
    )
  })
  test('that begins off the centreline says where the keel belongs', () => {
    expect(said(good.replace('[0 mm, 0 mm]', '[40 mm, 0 mm]'))).toMatch(
      /stations\.1\.points\.0\.0 is 40 mm; expected the keel first, on the centreline/,
    )
  })
  test('whose points are out of order says where the line crosses itself', () => {
    expect(said('[0 mm, 0 mm], [400 mm, 240 mm], [340 mm, 30 mm], [0 mm, 240 mm]')).toMatch(
      /stations\.1\.points\.2\.1 is 30 mm; expected points in the order they lie/,
    )
  })
  test('of another size than the length and beam beside it is a warning for each', () => {
    const words = said(good, 'length: 3.2 m, beam: 0.6 m')
    expect(words).toMatch(
      /hull\.length is 3\.2 m; expected about the 2\.4 m from the first station to the last/,
    )
    expect(words).toMatch(/hull\.beam is 0\.6 m; expected about the 0\.8 m of the widest station/)
  })
})
