import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root, wakewright } from './commandLine.ts'

const folder = mkdtempSync(join(tmpdir(), 'wakewright-'))
const heron = readFileSync(join(root, 'demo/heron.yaml'), 'utf8')

/** writes a craft file and runs look on it */
async function lookAt(name: string, content: string | Uint8Array) {
  const path = join(folder, name)
  writeFileSync(path, content)
  return { path, ...(await wakewright(['look', path])) }
}

describe('look', () => {
  test('--json prints findings and a balance with arrays of one length', async () => {
    const { code, out, err } = await wakewright(['look', 'demo/heron.yaml', '--json'])
    expect(err).toBe('')
    expect([0, 1]).toContain(code)
    const { answer, findings, balance } = JSON.parse(out)
    expect(answer).toMatchObject({
      says: expect.stringMatching(/reach .* and pull/),
      low: expect.any(Number),
      high: expect.any(Number),
    })
    expect(findings.length).toBeGreaterThan(5)
    for (const f of findings) {
      expect(f).toMatchObject({
        id: expect.any(String),
        question: expect.any(String),
        says: expect.any(String),
      })
      expect(['good', 'watch', 'stop', 'unknown']).toContain(f.standing)
    }
    expect(code).toBe(findings.some((f: { standing: string }) => f.standing === 'stop') ? 1 : 0)
    const { speed, rpm, thrust, drag, torque } = balance
    for (const list of [rpm, thrust, drag, torque]) expect(list).toHaveLength(speed.length)
    expect(balance.tiedUp.thrust).toBeCloseTo(thrust[0], 6)
    // a 100 cc engine, 8 kW: rpm are rev/min and the pull is below the momentum bound of its nozzle
    expect(rpm[0]).toBeGreaterThan(3000)
    const area = (Math.PI / 4) * 0.065 ** 2
    expect(thrust[0]).toBeLessThan(Math.cbrt(4 * 1000 * area * balance.tiedUp.power ** 2))
  })

  test('in words it prints the same findings, in metric or inch units', async () => {
    const { out } = await wakewright(['look', 'demo/teal.yaml'])
    expect(out).toContain('Teal')
    expect(out).toMatch(/pulls \d+ N/)
    const inch = await wakewright(['look', 'demo/teal.yaml', '--units', 'inch'])
    expect(inch.out).toMatch(/lbf/)
    expect(inch.out).toMatch(/mph/)
  })

  const broken: [string, string | Uint8Array, RegExp][] = [
    ['a unit left out', heron.replace('bore: 120.0 mm ±0.1', 'bore: 120.0'), /mm/],
    ['an unknown unit', heron.replace('hub: 50 mm', 'hub: 50 mn'), /mm/],
    [
      'a slip in a key',
      heron.replace('  pitch: 118', '  pich: 118').replace('    pitch:', '    pich:'),
      /pitch/,
    ],
    ['a negative size', heron.replace('hub: 50 mm', 'hub: -50 mm'), /50/],
    ['not a number', heron.replace('hub: 50 mm', 'hub: NaN mm'), /number/i],
    ['a key twice', heron.replace('name: Heron', 'name: Heron\nname: Hen'), /name/],
    ['not YAML', 'wakewright: 1\nname: [unclosed', /./],
    ['nothing', '', /./],
    ['a newer version', heron.replace('wakewright: 1', 'wakewright: 99'), /99/],
    ['a list instead of a map', '- 1\n- 2\n', /./],
    ['UTF-16', new Uint8Array(Buffer.from(`\ufeff${heron}`, 'utf16le')), /UTF-16/],
    ['bytes', new Uint8Array(3000).map((_, i) => (i * 7919) % 251), /./],
    ['ten megabytes', 'x'.repeat(10_000_000), /MB/],
    [
      'aliases in aliases',
      `a: &a [1,1,1,1,1,1,1,1,1]\n${Array.from({ length: 9 }, (_, i) => `k${i}: &b${i} [${'*a,'.repeat(8)}*a]`).join('\n')}\n`,
      /./,
    ],
    [
      'a nozzle wider than the rotor',
      heron.replace('bore: 65.0 mm ±0.2', 'bore: 165.0 mm ±0.2'),
      /nozzle|bore/,
    ],
  ]
  test.each(broken)(
    '%s is refused with file, line and column first, and no stack trace',
    async (name, content, says) => {
      const { path, code, out, err } = await lookAt(`${name.replace(/\W/g, '-')}.yaml`, content)
      expect(code).toBe(2)
      expect(out).toBe('')
      const first = err.split('\n')[0]!
      expect(first.startsWith(`${path}:`)).toBe(true)
      expect(first.slice(path.length)).toMatch(/^:\d+:\d+: \S/)
      expect(err).toMatch(says)
      expect(err).not.toMatch(/\bat .*\.js:\d+/)
    },
  )

  test('is one screen: how it goes, decisions one a line, what if, what to measure, and how much more there is', async () => {
    for (const name of ['heron', 'teal', 'dabchick']) {
      const { out } = await wakewright(['look', `demo/${name}.yaml`])
      const lines = out.trim().split('\n')
      expect(lines.length, name).toBeLessThanOrEqual(30)
      const told = lines.filter((line) => line.trim() !== '')
      expect(told[1], name).toMatch(/^It should reach [\d.]+ km\/h \([\d.]+ to [\d.]+ km\/h\) and pull \d+ N/)
      const numbers = told.flatMap((line) => /^ *(\d+)\. /.exec(line)?.[1] ?? []).map(Number)
      expect(numbers).toEqual(numbers.map((_, i) => i + 1))
      expect(told.at(-1), name).toMatch(/^Found: \d+ to stop for, \d+ to watch, \d+ not known yet, \d+ good/)
    }
  })

  test('--all tells every finding, as many as the screen counted', async () => {
    const { out: screen } = await wakewright(['look', 'demo/teal.yaml'])
    const counted = [...screen.trim().split('\n').at(-1)!.matchAll(/\d+/g)].reduce(
      (n, m) => n + Number(m[0]),
      0,
    )
    const { out } = await wakewright(['look', 'demo/teal.yaml', '--all'])
    expect(out.split('\n').filter((line) => /^[!✗?✓] (stop|watch|unknown|good) /.test(line))).toHaveLength(
      counted,
    )
  })

  test('a question nothing is worked out about yet says so', async () => {
    const { out } = await wakewright(['look', 'demo/heron.yaml', '--question', 'runs'])
    expect(out).toContain('Nothing is worked out yet about "runs"')
  })

  test('a reader that closes the pipe early ends it without a word of complaint', async () => {
    const child = spawn(process.execPath, [join(root, 'dist/cli/main.js'), 'look', 'demo/heron.yaml'], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    child.stdout.destroy()
    let err = ''
    child.stderr.on('data', (d) => (err += d))
    const [code] = await once(child, 'close')
    expect(err).toBe('')
    expect([0, 1]).toContain(code)
  })

  test('a file that is not there, or is a folder, is bad input', async () => {
    const gone = await wakewright(['look', join(folder, 'none.yaml')])
    expect(gone.code).toBe(2)
    expect(gone.err).toContain('none.yaml:1:1: there is no such file')
    expect((await wakewright(['look', folder])).code).toBe(2)
  })
})

describe('try', () => {
  test('prints what look would with those values, and writes nothing', async () => {
    const before = readFileSync(join(root, 'demo/heron.yaml'), 'utf8')
    const tried = await wakewright(['try', 'demo/heron.yaml', 'jet.rotor.pitch=97 mm', '--json'])
    expect(readFileSync(join(root, 'demo/heron.yaml'), 'utf8')).toBe(before)
    const path = join(folder, 'tried.yaml')
    writeFileSync(path, before.replace(/(\n {4}pitch: )[^\n]*/, '$197 mm'))
    const written = await wakewright(['look', path, '--json'])
    expect(JSON.parse(tried.out).balance.pull).toEqual(JSON.parse(written.out).balance.pull)
  })

  test.each([
    [['jet.rotor.pich=97 mm'], /no "jet\.rotor\.pich"; "jet\.rotor\.pitch" may be meant/],
    [['jet.rotor.pitch=97'], /has no unit/],
    [['97 mm'], /has no "="/],
    [['jet.rotor.pitch=-97 mm'], /97/],
  ])('%o is bad input and says why', async (values, says) => {
    const { code, err } = await wakewright(['try', 'demo/heron.yaml', ...values])
    expect(code).toBe(2)
    expect(err).toMatch(says)
  })
})

describe('make', () => {
  test('writes the parts that are asked for, of sheet and to print, and one ZIP of all', async () => {
    const to = join(folder, 'parts')
    const ended = await wakewright([
      'make',
      'demo/heron.yaml',
      'deck-1',
      'cap-1',
      '--to',
      to,
      '--square',
      '97x98',
    ])
    expect(ended.code).toBe(0)
    const names = readdirSync(to)
    for (const name of ['deck-1.pdf', 'deck-1.svg', 'deck-1.dxf', 'parts.zip']) expect(names).toContain(name)
    expect(names.filter((n) => /cap.*\.(stl|3mf)$/.test(n))).toHaveLength(2)
    expect(names.filter((n) => /^cap-1.*section\.svg$/.test(n)).length).toBeGreaterThan(0)
    expect(ended.out).toMatch(/thinnest wall met/)
  })

  test.each([
    [['deck-9'], /no part deck-9; expected deck-1/],
    [['--paper', 'A3'], /--paper A3, expected A4 or Letter/],
    [['--square', '50x50'], /measured\.x: 50 mm, expected 90 to 110/],
  ])('%j is bad input and says why', async (args, says) => {
    const ended = await wakewright(['make', 'demo/heron.yaml', ...args])
    expect(ended.code).toBe(2)
    expect(ended.err).toMatch(says)
  })
})

describe('reckon', () => {
  test('--list --json gives every reckoner with inputs and outputs', async () => {
    const { code, out } = await wakewright(['reckon', '--list', '--json'])
    expect(code).toBe(0)
    const all = JSON.parse(out)
    expect(all.length).toBeGreaterThan(11)
    for (const r of all) {
      expect(r.inputs.length).toBeGreaterThan(0)
      for (const p of [...r.inputs, ...r.outputs])
        expect(p).toMatchObject({ name: expect.any(String), unit: expect.any(String) })
    }
  })

  test('an answer in JSON is SI with units and sources, the same from a unit as from a bare SI number', async () => {
    const a = await wakewright(['reckon', 'ittc57', 'speed=7.2 km/h', 'length=1000 mm', '--json'])
    expect(a.code).toBe(0)
    const answer = JSON.parse(a.out)
    // ITTC 1957: 0.075 / (log10 Re - 2)²
    expect(answer.outputs.coefficient).toBeCloseTo(0.075 / (Math.log10(answer.outputs.reynolds) - 2) ** 2, 9)
    expect(answer.sources.length).toBeGreaterThan(0)
    expect(Object.keys(answer.units)).toEqual(Object.keys(answer.outputs))
    const si = await wakewright(['reckon', 'ittc57', 'speed=2', 'length=1', '--json'])
    expect(JSON.parse(si.out)).toEqual(answer)
  })

  test('an unknown reckoner, an input without a value and a value out of range are bad input', async () => {
    expect((await wakewright(['reckon', 'itc57'])).err).toContain('"ittc57" may be meant')
    expect((await wakewright(['reckon', 'ittc57', 'speed'])).code).toBe(2)
    const out = await wakewright(['reckon', 'ittc57', 'speed=-4', 'length=1'])
    expect(out.code).toBe(2)
    expect(out.err).toContain('speed')
  })
})

test('an unknown command or option is bad input and names the near one', async () => {
  const a = await wakewright(['lok', 'demo/heron.yaml'])
  expect(a.code).toBe(2)
  expect(a.err).toContain('look')
  expect((await wakewright(['look', 'demo/heron.yaml', '--jsn'])).code).toBe(2)
})

test('the launcher runs the same command line from any folder', async () => {
  const { code, out } = await wakewright(['look', join(root, 'demo/heron.yaml'), '--json'], {
    cwd: folder,
    launcher: true,
  })
  expect([0, 1]).toContain(code)
  expect(JSON.parse(out).findings.length).toBeGreaterThan(5)
})
