import { describe, expect, test } from 'vitest'
import { craftOf, heron, least, problemsOf, rootFile, teal } from '../../craft/craft.testkit.ts'
import { type Craft, setValue, whatIf } from '../../craft/index.ts'
import { chipInJet, speedAtShare } from '../../trades/fuel/chipInJet.ts'
import { fuelTrade } from '../../trades/fuel/fuelTrade.ts'
import { solveTrade } from '../../trades/trade.ts'
import { solveBalance } from '../push/solveBalance.ts'
import { fuelFound, fuelSolved, orderOf, wordsOf } from './fuel.testkit.ts'
import { fuelKnown } from './fuelKnown.ts'

const dabchick = rootFile('demo/dabchick.yaml')
const swap = (text: string, from: string | RegExp, to: string) => {
  const out = text.replace(from, to)
  expect(out, `${from}`).not.toBe(text)
  return out
}
const standings = (found: ReadonlyMap<string, { standing: string }>, standing: string) =>
  [...found].filter(([, f]) => f.standing === standing).map(([id]) => id)

describe('a strip chip of a quarter of the jet’s diameter in a 0.8 mm jet, from the craft file on', () => {
  const text = swap(
    swap(dabchick, 'jet: 1.00 mm (maker)', 'jet: 0.80 mm (measured)'),
    '    crankcase: {',
    '    mixture: { lambda: 0.8844 (measured) }\n    crankcase: {',
  )
  const chip = fuelFound(craftOf(text)).get('fuel.chip')

  test('leans 13 of air to one of fuel to 19', () => {
    expect(wordsOf(chip)).toContain('A chip 0.20 mm wide across a jet of 0.80 mm shuts 31 % of it')
    expect(wordsOf(chip)).toMatch(/: 19\.0 \([\d.]+ to [\d.]+\) of air to one of fuel instead of 13\.0/)
  })
  test('leaves no full throttle, and a choke brings it back at about twice the depression', () => {
    expect(wordsOf(chip)).toMatch(/past the 17\.6 that still fires: it dies above 9\d % of its air/)
    expect(wordsOf(chip)).toContain('A choke that brings 2.1 times the depression brings it back')
  })
})

describe('a vent that floods at the hump', () => {
  const flooded = swap(
    swap(
      heron,
      'vent: { opening: tank vent, forward: 30 mm (measured)',
      'vent: { opening: tank vent, forward: -100 mm (measured)',
    ),
    'liquid: 5.8 L ±0.6 (measured)',
    'liquid: 7.2 L ±0.1 (measured)',
  )
  test('is found, moved as told, and found good, as dry as was said', () => {
    const before = fuelFound(craftOf(flooded)).get('fuel.vent')!
    expect(before.standing).toBe('watch')
    expect(wordsOf(before)).toMatch(
      /The vent lies in the fuel (over the hump|setting off|up a wave at the hump)/,
    )
    expect(orderOf(before)).toMatch(/^move the vent’s fitting so that it stands .*: dry up to [\d.]+ L$/)
    const moved = before.changes!.reduce(
      (text, { path, to }) => setValue(text, path, `${to} (measured)`),
      flooded,
    )
    const after = fuelFound(craftOf(moved)).get('fuel.vent')!
    expect(after.standing).toBe('good')
    const said = Number(/dry up to ([\d.]+) L/.exec(orderOf(before))![1]) * 1e-3
    const { answer } = fuelSolved(craftOf(moved))
    expect(answer!.tank.dryTo * answer!.tank.body.capacity).toBeGreaterThanOrEqual(said - 1e-9)
    expect(answer!.tank.dryTo * answer!.tank.body.capacity).toBeLessThan(said + 1.01e-4)
  })
  test('with a breather in the cap petrol runs out of it, which is a stop', () => {
    const cap = swap(flooded, 'vent: { opening: tank vent,', 'vent: { kind: cap,')
    const vent = fuelFound(craftOf(cap)).get('fuel.vent')!
    expect(vent.standing).toBe('stop')
    expect(wordsOf(vent)).toContain('petrol runs out of it')
  })
  test('filled no more than told it is dry', () => {
    const vent = fuelFound(craftOf(swap(flooded, '7.2 L ±0.1', '5.0 L ±0.1'))).get('fuel.vent')!
    expect(vent.standing).not.toBe('stop')
    expect(wordsOf(vent)).toContain('stays dry only up to')
  })
})

test('a vent that ends low and aft dips into the water over the hump, and raised as told it does not', () => {
  const at = (up: number) =>
    craftOf(
      swap(
        heron,
        'kind: tank vent, at: [1.50 m, 0.05 m, 0.40 m]',
        `kind: tank vent, at: [0.05 m, 0.05 m, ${up.toFixed(2)} m]`,
      ),
    )
  const low = fuelFound(at(0.2)).get('fuel.vent-end')!
  expect(low.standing).toBe('watch')
  expect(wordsOf(low)).toMatch(/over the water over the hump: a crest gets into it/)
  const up = Number(/raise its end by (\d+) cm/.exec(orderOf(low))![1]) / 100
  expect(wordsOf(fuelFound(at(0.2 + up)).get('fuel.vent-end'))).not.toContain('crest')
})

describe('two carburettors behind a tee', () => {
  test('the same swarf reaches both, and each is fed', () => {
    const found = fuelFound(craftOf(teal))
    expect(wordsOf(found.get('fuel.chip'))).toContain('The same swarf reaches front and rear.')
    expect(found.get('fuel.feed.0')!.standing).toBe('good')
    expect(found.get('fuel.feed.1')!.standing).toBe('good')
  })
  test('a chip of any width in either jet can be asked of what was solved: the other engine goes on, the swarf reaches both', () => {
    const { base } = fuelSolved(craftOf(teal)).answer!.jets
    const [front, rear] = [0, 1].map((engine) => chipInJet({ ...base, engine, k: 0.4, form: 'strip' }))
    expect(front!.reaches).toEqual(['front', 'rear'])
    expect(front!.together).toBeGreaterThan(front!.torque)
    expect(front!.topSpeed!).toBeLessThan(front!.topSpeedBefore!)
    expect(rear!.topSpeed).toBeCloseTo(front!.topSpeed!, 9)
  })
  test('with one engine off only the other draws, and only its jet counts', () => {
    const { inputs, answer } = fuelSolved(whatIf(craftOf(teal), { 'engines.0.running': false }))
    expect(answer!.feed.fed.map((f) => f.engine)).toEqual(['rear'])
    expect(inputs.known!.engines.map((e) => e.running)).toEqual([false, true])
    expect(answer!.jets.quarter!.reaches).toEqual(['rear'])
    for (const s of answer!.feed.states)
      expect(s.flow.filter((q) => q > 1e-12).length).toBe(s.flow.length - 1)
  })
  test('the most speed with less torque is what the whole balance gives with it, within a tenth, on and off the plane', () => {
    const craft = craftOf(heron)
    const { curve } = fuelSolved(craft).inputs.known!.setting.shaft!
    const points = (craft.engines[0] as { curve: readonly { torque: { value: number } }[] }).curve
    const quick = { ranges: false, pitches: false, oneDead: false } as const
    for (const share of [1, 0.95, 0.85, 0.78, 0.6]) {
      const torques = points.map((p, i) => [`engines.0.curve.${i}.torque`, share * p.torque.value] as const)
      const { top } = solveBalance(whatIf(craft, Object.fromEntries(torques)), quick)
      expect(Math.abs(speedAtShare(curve, share) / top!.speed - 1), `${share}`).toBeLessThan(0.1)
    }
  })
})

describe('little in the file', () => {
  test('no fuel section: one thing that is unknown, saying what to give, and nothing to watch', () => {
    const found = fuelFound(craftOf(least))
    expect([...found.keys()]).toEqual(['fuel.headline'])
    expect(found.get('fuel.headline')!.standing).toBe('unknown')
    expect(wordsOf(found.get('fuel.headline'))).toContain('give the pick-up, the hose’s bore and length')
  })
  test('six values give a first useful answer with a range', () => {
    const six = `${least}
tanks:
  - { kind: box, name: can, foot: [1.5 m, 0 m, 0.1 m], length: 250 mm, width: 200 mm, height: 150 mm }
fuel:
  pickup: { kind: top tube }
  lines: [{ from: tank, to: engine 1, bore: 4 mm, length: 800 mm }]
  filter: { mesh: 100 µm }
  carburettor: { kind: float, jet: 0.8 mm }
`
    const found = fuelFound(craftOf(six))
    const headline = found.get('fuel.headline')!
    expect(headline.standing).not.toBe('unknown')
    expect(headline.low!).toBeLessThan(headline.value!)
    expect(headline.high!).toBeGreaterThan(headline.value!)
    expect(found.get('fuel.feed.0')!.low!).toBeLessThan(found.get('fuel.feed.0')!.high!)
    expect(standings(found, 'stop')).toEqual([])
  })
  test('an empty section and a tank are enough: everything else is assumed, and the hoses are told to be', () => {
    const bare = swap(heron, /\nfuel:[\s\S]*?\nopenings:/, '\nfuel: {}\n\nopenings:')
    const found = fuelFound(craftOf(bare))
    expect(found.get('fuel.feed.0')!.because.map((b) => b.says)).toContain(
      'hoses and heights are assumed: none is in the file',
    )
    expect(found.get('fuel.jet.0')!.measureNext?.path).toBe('fuel.carburettor.jet')
  })
})

describe('bad input', () => {
  test('more than the tank holds, a tank that is not there, a line that leads nowhere: field and reason', () => {
    const told = (from: string | RegExp, to: string, text = heron) =>
      problemsOf(swap(text, from, to)).join('\n')
    expect(told('liquid: 5.8 L ±0.6', 'liquid: 20 L')).toMatch(/tanks\.0\.liquid.*no more than the 8\.\d+ L/s)
    expect(told('  oil: 3 % (maker)', '  tank: main\n  oil: 3 % (maker)')).toMatch(/fuel\.tank.*fuel tank/s)
    expect(told('{ from: tee, to: rear,', '{ from: tee, to: reer,', teal)).toMatch(
      /no line from the tank to rear/,
    )
    expect(told('{ from: tank, to: tee,', '{ from: tanc, to: tee,', teal)).toMatch(
      /no line from the tank to front/,
    )
    expect(told('{ from: tee, to: rear,', '{ from: tee, to: front,', teal)).toMatch(/fuel\.lines\.2\.to/)
    expect(told('opening: tank vent', 'opening: chimney')).toMatch(/fuel\.vent\.opening.*tank vent/s)
    expect(told('full throttle: 15 %', 'full throttle: 80 %')).toMatch(/fuel\.use\.idle/)
    const twice = swap(dabchick, '    crankcase: {', '    mixture: { oil: 5 % (measured) }\n    crankcase: {')
    expect(problemsOf(twice).join('\n')).toMatch(/fuel\.oil.*5 %/s)
  })
  test('lines tried that lead nowhere give no pressure', () => {
    const found = fuelFound(whatIf(craftOf(teal), { 'fuel.lines.2.to': 'nowhere' }))
    expect(found.get('fuel.lines')!.standing).toBe('unknown')
    expect([...found.keys()].filter((id) => id.startsWith('fuel.feed') || id === 'fuel.vapour')).toEqual([])
  })
})

describe('craft that are wrong', () => {
  const tried = (values: Record<string, number | string>, craft: Craft = craftOf(heron)) =>
    fuelFound(whatIf(craft, values))
  test('fed by gravity from a tank below its carburettor it runs dry, and raised as told it does not', () => {
    const low = { 'fuel.feed': 'gravity', 'fuel.pump': 0, 'fuel.lines.0.rise': 0.05 }
    const fed = tried(low).get('fuel.feed.0')!
    expect(fed.standing).toBe('stop')
    const up = Number(/by (\d+) cm/.exec(orderOf(fed))![1]) / 100
    const after = tried({ ...low, 'fuel.lines.0.rise': 0.05 - up }).get('fuel.feed.0')!
    expect(after.standing).toBe('good')
  })
  test('a hose ten times too narrow starves it', () => {
    const fed = tried({ 'fuel.lines.0.bore': 0.45e-3, 'fuel.lines.0.narrowest': 0.35e-3 }).get('fuel.feed.0')!
    expect(fed.standing).toBe('stop')
    expect(wordsOf(fed)).toContain('runs dry')
  })
  test('a jet ten times too wide is too rich, one ten times too narrow too lean', () => {
    expect(wordsOf(tried({ 'fuel.carburettor.jet': 8e-3 }).get('fuel.jet.0'))).toContain('too rich')
    expect(wordsOf(tried({ 'fuel.carburettor.jet': 0.25e-3 }).get('fuel.jet.0'))).toContain('too lean')
  })
  test('in a hot place winter petrol boils in the line', () => {
    const vapour = tried({ 'place.air temperature': 318, 'fuel.volatility': 9e4 }).get('fuel.vapour')!
    expect(vapour.standing).toBe('watch')
    expect(wordsOf(vapour)).toContain('boils in the line')
  })
  test('a tank filled to the brim is to be let down by what is told', () => {
    const craft = whatIf(craftOf(dabchick), { 'tanks.0.filled': 0.99 })
    const fill = fuelFound(craft).get('fuel.fill')!
    expect(fill.standing).toBe('watch')
    const out = Number(/let out ([\d.]+) L/.exec(orderOf(fill))![1]) * 1e-3
    const volume = (Math.PI / 4) * 0.15 ** 2 * 0.4
    const after = fuelFound(whatIf(craftOf(dabchick), { 'tanks.0.filled': 0.99 - out / volume })).get(
      'fuel.fill',
    )!
    expect(after.standing).toBe('good')
  })
  test('a filter as fine as told passes', () => {
    const coarse = tried({ 'fuel.filter.mesh': 300e-6 })
    expect(coarse.get('fuel.filter')!.standing).toBe('watch')
    const told = Number(/filter of (\d+) µm/.exec(orderOf(coarse.get('fuel.filter')))![1]) * 1e-6
    const fine = tried({ 'fuel.filter.mesh': told })
    expect(fine.get('fuel.filter')!.standing).toBe('good')
    expect(fine.get('fuel.chip')!.standing).toBe('good')
  })
  test('straps as strong as told hold', () => {
    const weak = tried({ 'fuel.retention.strength': 100 }).get('fuel.straps')!
    expect(weak.standing).toBe('watch')
    const each = Number(/hold ([\d\u202F]+) N each/.exec(orderOf(weak))![1])
    expect(tried({ 'fuel.retention.strength': each }).get('fuel.straps')!.standing).toBe('good')
  })
  test('heel alone, on the edge, changes no verdict to a number that is none', () => {
    const found = tried({ 'rider.position': 0.1, 'rider.off centre': 0.3 })
    for (const [id, f] of found)
      for (const v of [f.value, f.low, f.high]) if (v !== undefined) expect(v, id).not.toBeNaN()
  })
})

test('every demo is fed: nothing stops, and at most a third is to watch', () => {
  for (const name of ['heron', 'teal', 'dabchick', 'sandpiper']) {
    const found = fuelFound(craftOf(rootFile(`demo/${name}.yaml`)))
    expect(standings(found, 'stop'), name).toEqual([])
    expect(standings(found, 'unknown'), name).toEqual([])
    expect(standings(found, 'watch').length, name).toBeLessThanOrEqual(found.size / 3)
  }
})

test('the same craft and balance are handed as the same thing, so that the answer is kept', () => {
  const craft = craftOf(heron)
  const known = { craft, push: {} }
  expect(fuelKnown(known)).toBe(fuelKnown({ craft, push: {} }))
  expect(solveTrade(fuelTrade, craft, fuelKnown(known))).toBe(solveTrade(fuelTrade, craft, fuelKnown(known)))
  const noted = { ...craft, log: [...craft.log] }
  expect(fuelKnown({ craft: noted, push: {} })).toBe(fuelKnown(known))
})
