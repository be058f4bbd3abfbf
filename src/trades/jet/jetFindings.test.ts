import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { inWords, type PrintedFinding } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { type Craft, readCraft, whatIf } from '../../craft/index.ts'
import { solveJet } from './jet.ts'
import { jetFindings as jetFindingsRaw } from './jetFindings.ts'
import { jetDoubts, jetFromCraft } from './jetFromCraft.ts'

// the tests read the words
const jetFindings = (...given: Parameters<typeof jetFindingsRaw>) => inWords(jetFindingsRaw(...given))

function demo(name: string): Craft {
  const text = readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(JSON.stringify(problems))
  return craft
}
const heron = demo('heron')
const at = { tiedUp: 86, most: 117, ratio: 1.25, top: { rotation: 92, V: 12 } }
const find = (craft: Craft, id: string, where = at): PrintedFinding | undefined =>
  jetFindings(craft, where).find((f) => f.id === id)

test('both demo crafts give a jet that runs, with every number finite', () => {
  for (const name of ['heron', 'teal']) {
    const p = solveJet(jetFromCraft(demo(name)), 80, 4)
    expect(p.confidence).toBe('ok')
    for (const key of ['Q', 'gH', 'T', 'F', 'eta', 'Ka', 'Nss'] as const)
      expect(Number.isFinite(p[key])).toBe(true)
  }
})

test('every uncertain input of the jet is named by its craft path, and reading one of them differently moves the jet', () => {
  const named = new Set<string>()
  jetFromCraft(heron, (q) => {
    if (q.high > q.low) named.add(q.path)
    return q.value
  })
  for (const path of [
    'jet.rotor.pitch',
    'jet.nozzle.bore',
    'place.water temperature',
    jetDoubts.turning.path,
  ])
    expect([...named]).toContain(path)
  const now = solveJet(jetFromCraft(heron), 80, 0).T
  const steep = jetFromCraft(heron, (q) => (q.path === 'jet.rotor.pitch' ? q.high : q.value))
  expect(solveJet(steep, 80, 0).T).toBeGreaterThan(now)
  expect(steep.rotor.pitchTrailing).toBeCloseTo(steep.rotor.pitchLeading, 12)
})

test('salt water is denser and boils a little later; high water has less pressure on it', () => {
  const salt = jetFromCraft(whatIf(heron, { 'place.water': 'salt' })).water
  const fresh = jetFromCraft(heron).water
  expect(salt.density).toBeGreaterThan(fresh.density + 20)
  expect(salt.vapourPressure).toBeLessThan(fresh.vapourPressure)
  const high = jetFromCraft(whatIf(heron, { 'place.altitude': 2000 })).water
  expect(high.atmosphere).toBeLessThan(0.82 * fresh.atmosphere)
})

test('without a solved balance only what needs no rotation is said', () => {
  expect(jetFindings(heron).map((f) => f.id)).toEqual(['jet.grate', 'jet.gap'])
})

test('findings carry a sentence with numbers, reasons with links, sources, and never NaN', () => {
  for (const f of jetFindings(heron, at)) {
    expect(f.says, f.id).toMatch(/\d/)
    expect(f.says, f.id).not.toMatch(/NaN|undefined|Infinity/)
    expect(f.because.length, f.id).toBeGreaterThan(0)
    expect(f.sources.length, f.id).toBeGreaterThan(0)
    if (f.low !== undefined && f.high !== undefined) {
      expect(f.low, f.id).toBeLessThanOrEqual(f.value!)
      expect(f.high, f.id).toBeGreaterThanOrEqual(f.value!)
    }
  }
})

test('a wide gap, a missing stator and a choked impeller are each called out', () => {
  expect(find(heron, 'jet.gap')!.standing).toBe('good')
  expect(find(whatIf(heron, { 'jet.rotor.gap': 0.9e-3 }), 'jet.gap')!.standing).toBe('watch')
  const tight = find(whatIf(heron, { 'jet.rotor.gap': 0.2e-3 }), 'jet.gap')!
  expect(tight.says).toMatch(/tight; worn to 0\.60 mm it would cost \d\.\d %/)
  expect(find(heron, 'jet.stator')).toBeUndefined()
  const bare = find(whatIf(heron, { 'jet.stator.vanes': 0 }), 'jet.stator')!
  expect(bare.standing).toBe('watch')
  expect(bare.value!).toBeLessThan(-50)
  const choked = find(heron, 'jet.cavitation-tied', { ...at, tiedUp: 130, most: 150 })!
  // past the knee it goes on pumping: it costs, but it brings the craft home
  expect(choked.standing).toBe('watch')
  expect(choked.says).toMatch(
    /runs choked with vapour at \d+ rpm and pulls \d+ N; at \d+ rpm, where it chokes, it pulls \d+ N/,
  )
  const [, now, knee] = /pulls (\d+) N; .* it pulls (\d+) N/.exec(choked.says)!
  expect(Number(now)).toBeLessThan(Number(knee))
  expect(Number(now)).toBeGreaterThan(0.5 * Number(knee))
  const high = { ...at, tiedUp: 240, most: 260 }
  expect(find(whatIf(heron, { 'place.altitude': 4000 }), 'jet.cavitation-tied', high)!.standing).toBe('stop')
})

test('the pull tied up counts on the demos, and how to tell air by three throttles is said', () => {
  for (const name of ['heron', 'teal']) {
    const f = jetFindings(demo(name), at).find((x) => x.id === 'jet.air')!
    expect(f.standing, name).toBe('good')
    expect(f.says).toMatch(/rpm squared at three throttles must agree.*weight aft/)
  }
  // so slow that not even a swirl brings air
  const slow = find(heron, 'jet.air', { ...at, tiedUp: 13 })!
  expect(slow.standing).toBe('good')
  expect(slow.says).toContain('even a swirl')
})

test('an opening close under the surface at the edge of the bottom draws air: it is watched, and below which rotation it does not', () => {
  const shallow = (depth: number, front: number) =>
    find(
      whatIf(heron, {
        'jet.duct.rotor depth': depth,
        'jet.intake.front': heron.jet.intake.length.value + front,
      }),
      'jet.air',
    )!
  const bad = shallow(-0.08, 0.13)
  expect(bad.standing).toBe('watch')
  expect(bad.says).toMatch(/likely to draw air/)
  const clear = Number(/below about (\d+) rpm/.exec(bad.says)![1]) / 60 / at.ratio
  const there = find(
    whatIf(heron, {
      'jet.duct.rotor depth': -0.08,
      'jet.intake.front': heron.jet.intake.length.value + 0.13,
    }),
    'jet.air',
    { ...at, tiedUp: 0.9 * clear },
  )!
  expect(there.standing).toBe('good')
  // more water, or more bottom behind the opening, is never worse
  const rank = { watch: 0, good: 1 } as Record<string, number>
  let last = -1
  for (const front of [0.02, 0.05, 0.1, 0.2, 0.4]) {
    const now = rank[shallow(-0.08, front).standing]!
    expect(now).toBeGreaterThanOrEqual(last)
    last = now
  }
  expect(last).toBe(1)
})

test('a thick-edged, long-wrapped rotor is better off with fewer blades, and the pitch for it is given', () => {
  const thick = whatIf(heron, {
    'jet.rotor.trailing edge': 4e-3,
    'jet.rotor.wrap': 3.6,
    'jet.rotor.blades': 4,
  })
  const f = find(thick, 'jet.blades')!
  expect(f.says).toMatch(/3 blades of \d+ mm pitch/)
  expect(f.because.map((b) => b.says).join()).toContain('trailing edges block')
})

test('a thin printed root is called out with the thickness it should have, a metal one is not judged', () => {
  expect(find(whatIf(heron, { 'jet.rotor.root thickness': 12e-3 }), 'jet.root')!.standing).toBe('good')
  const thin = find(whatIf(heron, { 'jet.rotor.root thickness': 4e-3 }), 'jet.root')!
  expect(thin.standing).not.toBe('good')
  const needed = Number(/root of ([\d.]+) mm/.exec(printed(thin.act!))![1]) / 1000
  expect(find(whatIf(heron, { 'jet.rotor.root thickness': needed * 1.05 }), 'jet.root')!.standing).toBe(
    'good',
  )
  expect(find(whatIf(heron, { 'jet.rotor.material': 'bronze' }), 'jet.root')).toBeUndefined()
})
