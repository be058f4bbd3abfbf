import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import { MapStore, modelFromCraft, NotBalanced } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { humpOf, operatingTable, type TableRow } from './operatingTable.ts'
import { probe } from './probe.ts'
import { dragOf, propel, surplusAt } from './propulsionModel.ts'
import { lowersBoth, pushFindings } from './pushFindings.ts'
import { impellerDrive } from './shaft.ts'
import { solveBalance, tryValues } from './solveBalance.ts'

const heron = demoCraft('heron')
const teal = demoCraft('teal')
const maps = new MapStore(400)
const quick = (craft: Craft) => solveBalance(craft, { maps, ranges: false })

/** the craft with every engine's torque multiplied */
const stronger = (craft: Craft, share: number): Craft => ({
  ...craft,
  engines: craft.engines.map((e) =>
    e.kind === 'curve'
      ? {
          ...e,
          curve: e.curve.map((p) => ({ ...p, torque: { ...p.torque, value: p.torque.value * share } })),
        }
      : e.kind === 'peak'
        ? { ...e, power: { ...e.power, value: e.power.value * share } }
        : e,
  ),
})

describe.each([
  ['heron', heron],
  ['teal', teal],
])('%s', (_name, craft) => {
  const b = solveBalance(craft, { maps })

  test('engines and impeller agree at every speed of the table', () => {
    const model = modelFromCraft(craft, maps)
    const unit = model.units[0]!
    b.curve.speed.forEach((v, i) => {
      const n = b.curve.rpm[i]! / 60 / unit.shaft.ratio
      expect(Math.abs(surplusAt(unit, v)(n))).toBeLessThan(1e-6 * impellerDrive(unit.shaft, n))
    })
  })

  test('thrust power never exceeds shaft power, and the table holds numbers only', () => {
    b.curve.speed.forEach((v, i) => {
      const shaft = 2 * Math.PI * (b.curve.rpm[i]! / 60 / craft.drive.ratio.value) * b.curve.torque[i]!
      expect(b.curve.thrust[i]! * v).toBeLessThan(shaft)
    })
    for (const list of Object.values(b.curve))
      for (const x of list) if (typeof x === 'number') expect(Number.isFinite(x)).toBe(true)
  })

  test('at the top speed thrust equals drag, and it lies inside its range', () => {
    expect(b.top).toBeDefined()
    const drag = b.curve.drag
    expect(Math.max(...drag)).toBeGreaterThan(b.top!.thrust)
    for (const r of [b.topSpeed, b.pull, b.tiedUpRotation]) {
      expect(r.low).toBeLessThan(r.value)
      expect(r.high).toBeGreaterThan(r.value)
    }
  })

  test('the best pitch, fitted, does as well as any pitch tried on the whole balance', () => {
    const { value, low, high } = b.verdict.bestPitch
    const fittedWith = (pitch: number) =>
      probe(
        modelFromCraft(
          whatIf(craft, {
            'jet.rotor.pitch': pitch,
            'jet.rotor.trailing pitch':
              (craft.jet.rotor.trailingPitch.value * pitch) / craft.jet.rotor.pitch.value,
          }),
          maps,
        ),
      )
    const worth = (pitch: number) => {
      const p = fittedWith(pitch)
      return Math.sqrt(p.pull * p.topSpeed)
    }
    const best = worth(value)
    for (let share = 0.5; share < 1.5; share += 0.07) expect(worth(share * value)).toBeLessThan(1.002 * best)
    // at the ends of the stretch about 2 % is lost
    for (const end of [low, high]) expect(worth(end) / best).toBeCloseTo(0.98, 2)
  })

  test('every change and driver has numbers, and its range holds its value', () => {
    expect(b.changes.length).toBeGreaterThan(8)
    for (const c of b.changes) {
      expect(Number.isFinite(c.pull.value), c.id).toBe(true)
      expect(c.pull.low, c.id).toBeLessThanOrEqual(c.pull.value)
      expect(c.pull.high, c.id).toBeGreaterThanOrEqual(c.pull.value)
    }
    expect(b.drivers.length).toBeGreaterThan(5)
  })

  test('the findings are sentences with a standing, a reason and a source, and no number is missing from them', () => {
    const findings = inWords(pushFindings(craft, b))
    expect(findings.length).toBeGreaterThan(4)
    for (const f of findings) {
      expect(printed(f.says), f.id).toMatch(/^[A-Z].*\.$/)
      expect(printed(f.says), f.id).not.toMatch(/NaN|undefined|Infinity|null/)
      expect(f.because.length, f.id).toBeGreaterThan(0)
      expect(f.sources.length, f.id).toBeGreaterThan(0)
    }
    expect(new Set(findings.map((f) => f.id)).size).toBe(findings.length)
  })
})

test('more torque turns the impeller faster and pulls more; more pitch turns it slower', () => {
  fc.assert(
    fc.property(fc.double({ min: 1.02, max: 1.3, noNaN: true }), (share) => {
      const now = quick(heron).tiedUp
      const more = quick(stronger(heron, share)).tiedUp
      expect(more.rotation).toBeGreaterThan(now.rotation)
      expect(more.thrust).toBeGreaterThan(now.thrust)
      const steep = quick(whatIf(heron, { 'jet.rotor.pitch': heron.jet.rotor.pitch.value * share })).tiedUp
      expect(steep.rotation).toBeLessThan(now.rotation)
    }),
    { numRuns: 8 },
  )
})

test('two engines alike may change places without changing anything, and one dead never does better than both', () => {
  const swapped: Craft = { ...teal, engines: [teal.engines[1]!, teal.engines[0]!] }
  const a = quick(teal)
  const b = quick(swapped)
  expect(b.tiedUp.thrust).toBeCloseTo(a.tiedUp.thrust, 6)
  expect(a.oneDead).toBeDefined()
  const dead = a.oneDead!
  expect(dead.pull.value).toBeLessThan(a.tiedUp.thrust)
  expect(dead.withClutch!.pull.value).toBeGreaterThan(dead.pull.value)
  expect(dead.withClutch!.rotation.value).toBeGreaterThan(dead.rotation.value)
})

test('a jet each gives twice the pull of one engine with one jet', () => {
  const each = quick({ ...teal, drive: { ...teal.drive, arrangement: 'a jet each' } })
  const alone = probe(modelFromCraft({ ...teal, engines: [teal.engines[0]!] }, maps))
  expect(each.tiedUp.thrust / alone.pull).toBeCloseTo(2, 6)
})

test('a ratio and its inverse are consistent: halving the engine curve speed and the ratio changes nothing at the impeller', () => {
  const geared = modelFromCraft(heron, maps).units[0]!
  const shaft = geared.shaft
  const direct = {
    ...shaft,
    ratio: 1,
    engines: shaft.engines.map((e) => ({
      ...e,
      curve: {
        ...e.curve,
        cubic: {
          x: e.curve.cubic.x.map((x) => x / shaft.ratio),
          y: e.curve.cubic.y.map((y) => y * shaft.ratio),
          slope: e.curve.cubic.slope.map((s) => s * shaft.ratio ** 2),
        },
        from: e.curve.from / shaft.ratio,
        to: e.curve.to / shaft.ratio,
        end: e.curve.end / shaft.ratio,
        atRest: e.curve.atRest * shaft.ratio,
      },
    })),
  }
  for (const n of [20, 45, 70, 85]) expect(impellerDrive(direct, n)).toBeCloseTo(impellerDrive(shaft, n), 9)
})

test('a much steeper impeller is called too steep, a much shallower one too shallow', () => {
  const at = (share: number) =>
    quick(
      whatIf(heron, {
        'jet.rotor.pitch': heron.jet.rotor.pitch.value * share,
        'jet.rotor.trailing pitch': heron.jet.rotor.pitch.value * share,
      }),
    ).verdict
  expect(at(1.5).code).toBe('too steep')
  expect(at(0.6).code).toBe('too shallow')
  // the best pitch does not depend on the pitch that is fitted
  expect(at(1.2).bestPitch.value / at(0.9).bestPitch.value).toBeCloseTo(1, 2)
})

test('all engines dead gives no pull and says so, without a made-up number', () => {
  const dead: Craft = {
    ...heron,
    engines: heron.engines.map((e) => ({ ...e, running: false })) as Craft['engines'],
  }
  const b = quick(dead)
  expect(b.tiedUp.rotation).toBeNaN()
  for (const f of pushFindings(dead, b)) expect(printed(f.says), f.id).not.toMatch(/NaN/)
})

test('a motor without its constants is not balanced, and the error names the engine', () => {
  const motor = { ...heron, engines: [{ ...heron.engines[0]!, kind: 'electric' }] } as unknown as Craft
  expect(() => quick(motor)).toThrow(NotBalanced)
})

test('a rider who stays put never has less drag than one who moves, and where he stays changes the top speed', () => {
  const still: Craft = { ...heron, rider: { ...heron.rider, moves: false } }
  const moving = quick(heron)
  const held = quick(still)
  held.curve.drag.forEach((d, i) => {
    expect(d).toBeGreaterThanOrEqual(moving.curve.drag[i]! - 0.01 * d - 1e-6)
  })
  const aft = quick(whatIf(still, { 'rider.position': 0.5 })).topSpeed.value
  const fore = quick(whatIf(still, { 'rider.position': 1.4 })).topSpeed.value
  expect(Math.abs(aft - fore)).toBeGreaterThan(0.1)
})

test('trying every value of a change does what the change predicted, also where the file writes its own trailing pitch', () => {
  const { rotor } = heron.jet
  const written: Craft = {
    ...heron,
    jet: {
      ...heron.jet,
      rotor: { ...rotor, trailingPitch: { ...rotor.trailingPitch, value: 0.112, source: 'measured' } },
    },
  }
  for (const craft of [heron, written]) {
    const b = solveBalance(craft, { maps })
    const now = probe(modelFromCraft(craft, maps))
    expect(b.changes.some((c) => c.path === 'jet.rotor.pitch')).toBe(true)
    for (const c of b.changes) {
      const then = probe(modelFromCraft(tryValues(craft, { [c.path]: c.to, ...c.also }), maps))
      expect(then.pull - now.pull, c.id).toBeCloseTo(c.pull.value, 6)
      expect(then.rotation - now.rotation, c.id).toBeCloseTo(c.rotation.value, 6)
    }
  }
})

test('an impeller a little too steep is said to be so, with the pitches that do best and where it holds the engines', () => {
  const v = quick(heron).verdict
  expect(v.code).toBe('too steep')
  expect(printed(v.says)).toMatch(/a little too steep: \d+ mm to \d+ mm of pitch instead of 108 mm/)
  expect(printed(v.says)).toMatch(/% short of their most power/)
})

describe('a direct drive with a steep impeller', () => {
  const sandpiper = demoCraft('sandpiper')
  const pitched = (craft: Craft, mm: number) => whatIf(craft, { 'jet.rotor.pitch': mm / 1000 })
  const best = quick(sandpiper).verdict.bestPitch

  test('is too steep from 85 mm up and right at its best, though the engines never come near their power peak', () => {
    for (const mm of [85, 100, 110]) {
      const v = quick(pitched(sandpiper, mm)).verdict
      expect(v.code, `${mm} mm`).toBe('too steep')
      expect(printed(v.says)).not.toMatch(/no pitch/)
      expect(v.bestPitch.value).toBeCloseTo(best.value, 5)
    }
    expect(quick(pitched(sandpiper, best.value * 1000)).verdict.code).toBe('right')
  })

  test('gets the same best pitches whatever pitch the file starts from, 0.6 to 1.6 of the best', () => {
    for (const share of [0.6, 0.8, 1, 1.3, 1.6]) {
      const v = quick(pitched(sandpiper, 1000 * share * best.value)).verdict
      expect([v.bestPitch.low, v.bestPitch.high], `${share}`).toEqual([best.low, best.high])
      expect(v.code).toBe(share < 0.9 ? 'too shallow' : share > 1.1 ? 'too steep' : 'right')
    }
  })

  test('does not bog: with one steady speed and no valley the engines pull straight up, however low they settle', () => {
    for (const mm of [60, 67, 85, 100]) {
      const b = quick(pitched(sandpiper, mm))
      expect(b.tiedUpRoots.filter((r) => r.stable).length).toBe(1)
      expect(b.matching.comesOnPipe, `${mm} mm`).toBe(true)
      const pipe = pushFindings(sandpiper, b).find((f) => f.id === 'push.pipe')!
      expect(pipe.standing).toBe('good')
      expect(printed(pipe.says)).not.toMatch(/bog|hang/)
    }
  })

  test('is never told to change a ratio that it does not have, nor to do what lowers both pull and speed', () => {
    for (const mm of [55, 70, 100]) {
      const craft = pitched(sandpiper, mm)
      const b = solveBalance(craft, { maps })
      expect(b.changes.some((c) => c.path === 'drive.ratio')).toBe(false)
      const said = pushFindings(craft, b).find((f) => f.id === 'push.change')
      const change = b.changes.find((c) => said && printed(said.says).includes(printed(c.says)))
      if (said) expect(change && lowersBoth(change)).toBe(false)
    }
  })
})

test('engines with a valley bog where the impeller holds them below it, and may hang where it nearly does', () => {
  const engine = { ...heron.engines[0]! } as Extract<Craft['engines'][number], { kind: 'curve' }>
  // a dip in the middle of the climb, as a pipe out of tune makes one
  const dipped = (depth: number): Craft => ({
    ...heron,
    engines: [
      {
        ...engine,
        curve: engine.curve.map((p) =>
          p.at.value * 60 === 5000 ? { ...p, torque: { ...p.torque, value: depth * p.torque.value } } : p,
        ),
      },
    ],
  })
  const valley = (depth: number) => quick(dipped(depth)).matching
  const held = valley(0.4)
  expect(held.held).toBe(true)
  expect(held.comesOnPipe).toBe(false)
  expect(held.bogRotation * 60).toBeLessThan(5000)
  let hangs = 0
  for (let depth = 0.45; depth < 0.9; depth += 0.01) {
    const m = valley(depth)
    if (!m.held && !m.comesOnPipe) {
      hangs++
      expect(m.bogRatio).toBeGreaterThan(0.95)
      expect(m.bogRatio).toBeLessThan(1)
    }
  }
  expect(hangs).toBeGreaterThan(0)
})

test('the hump is the least thrust over drag there is, not the worst row of the table', () => {
  for (const craft of [heron, teal]) {
    const model = modelFromCraft(craft, maps)
    const table = operatingTable(model, { steps: 28 })
    const hump = humpOf(model, table)
    const margin = (r: TableRow) => r.propulsion.thrust / r.drag.drag
    expect(margin(hump)).toBeLessThanOrEqual(margin(table.rows[table.humpRow]!))
    const from = hump.propulsion.states.map((s) => s.rotation)
    const low = table.rows[table.humpRow - 1]!.speed
    const high = table.rows[table.humpRow + 1]!.speed
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i <= 300; i++) {
      const v = low + ((high - low) * i) / 300
      const drag = dragOf(model, v)
      if (drag.regime === 'hump') least = Math.min(least, propel(model, v, from).thrust / drag.drag)
    }
    expect(margin(hump)).toBeLessThan(1.003 * least)
  }
})

test('engine torque times ratio and efficiency is the impeller’s torque, tied up and at every speed of the table', () => {
  for (const craft of [heron, teal]) {
    const b = quick(craft)
    const share = craft.drive.ratio.value * craft.drive.efficiency.value
    expect(b.tiedUp.engineTorque * share).toBeCloseTo(b.tiedUp.torque, 4)
    b.curve.engineTorque.forEach((t, i) => {
      expect(t * share).toBeCloseTo(b.curve.torque[i]!, 4)
    })
  }
})

test('nothing is said of thrust above drag where the jet does not move the craft', () => {
  // the rotor so far above the water that no pressure lifts it up there
  const dry = quick(whatIf(teal, { 'jet.duct.rotor depth': -12 }))
  expect(dry.top).toBeUndefined()
  expect(dry.limitedBy.says).toMatch(/does not move it/)
  expect(dry.limitedBy.says).not.toMatch(/above drag/)
  const high = quick(whatIf(teal, { 'place.altitude': 2500 }))
  // less air takes power from the engines too
  expect(high.tiedUp.thrust).toBeGreaterThan(0.4 * quick(teal).tiedUp.thrust)
  expect(high.tiedUp.thrust).toBeLessThan(quick(teal).tiedUp.thrust)
  expect(high.topSpeed.value).toBeGreaterThan(5)
})
