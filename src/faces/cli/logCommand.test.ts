import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeEach, expect, test } from 'vitest'
import { readCraft } from '../../craft/index.ts'
import { readLog } from '../../whole/log/logText.ts'
import { logAdd, logPathOf } from './logCommand.ts'
import { BadInput } from './outcome.ts'

const dir = mkdtempSync(join(tmpdir(), 'log-'))
afterAll(() => rmSync(dir, { recursive: true }))
const file = join(dir, 'heron.yaml')
const logFile = logPathOf(file)
const read = (path: string) => (existsSync(path) ? readFileSync(path, 'utf8') : '')
beforeEach(() => {
  for (const path of [logFile, `${logFile}.before`, `${file}.before`]) rmSync(path, { force: true })
  copyFileSync(resolve(import.meta.dirname, '../../../demo/heron.yaml'), file)
})
const quietly = (work: () => void) => {
  const { write } = process.stdout
  process.stdout.write = () => true
  try {
    work()
  } finally {
    process.stdout.write = write
  }
}
const add = (kind: string, words: string, options = {}) =>
  quietly(() => logAdd(file, kind, words.split(' '), options, '2026-05-14'))
const refusal = (work: () => void): string => {
  try {
    work()
  } catch (error) {
    if (error instanceof BadInput) return error.lines.join('\n')
    throw error
  }
  return 'nothing was refused'
}

test('an entry goes behind what stands in the log beside the craft, and what stood there is kept', () => {
  add('run', 'two laps', { reading: ['pull=20 kg', 'rpm=5200'] })
  const first = read(logFile)
  add('note', 'windy')
  expect(read(logFile).startsWith(first)).toBe(true)
  expect(read(`${logFile}.before`)).toBe(first)
  expect(readLog(read(logFile)).entries.map((e) => e.entry.says)).toEqual(['two laps', 'windy'])
  expect(read(file)).toBe(readFileSync(resolve(import.meta.dirname, '../../../demo/heron.yaml'), 'utf8'))
})

test('a change of a value is written into the craft file with its log entry, and nowhere twice', () => {
  add('change', 'too steep', { path: 'jet.rotor.pitch', to: '100 mm (measured)' })
  const { craft } = readCraft(read(file), file)
  expect(craft!.jet.rotor.pitch.value).toBeCloseTo(0.1, 9)
  expect(craft!.log).toEqual([
    {
      date: '2026-05-14',
      path: 'jet.rotor.pitch',
      from: '108 mm ±3 (measured)',
      to: '100 mm (measured)',
      reason: 'too steep',
    },
  ])
  expect(existsSync(logFile)).toBe(false)
})

test('what does not fit is refused by name and nothing is written', () => {
  const before = read(file)
  expect(refusal(() => add('party', 'x'))).toContain('kind "party" is not one of run, check')
  expect(refusal(() => add('note', 'x', { at: '14 May' }))).toContain('--at "14 May" is not a date')
  expect(refusal(() => add('run', 'x', { reading: ['pull=90000 kg'] }))).toContain('no such craft does that')
  expect(refusal(() => add('run', 'x', { reading: ['pull'] }))).toContain('is not name=value')
  expect(refusal(() => add('change', 'x', { path: 'jet.rotor.pich', to: '1 mm' }))).toContain(
    '"jet.rotor.pitch" may be meant',
  )
  expect(refusal(() => add('change', 'x', { path: 'jet.rotor.pitch' }))).toContain('needs --to')
  expect(refusal(() => add('change', 'x', { path: 'jet.rotor.pitch', to: '9 km' }))).not.toBe(
    'nothing was refused',
  )
  expect(refusal(() => add('note', 'x', { path: 'jet.rotor.pitch', to: '9 mm' }))).toContain(
    'belongs to a change',
  )
  expect(read(file)).toBe(before)
  expect(existsSync(logFile)).toBe(false)
})

test('a log spoilt by hand is added to all the same and loses nothing', () => {
  writeFileSync(logFile, '- at: soon\n  says: [x\nstray')
  add('note', 'still here')
  expect(read(logFile).startsWith('- at: soon\n  says: [x\nstray\n')).toBe(true)
  const { entries, problems } = readLog(read(logFile))
  expect(entries.map((e) => e.entry.says)).toEqual(['still here'])
  expect(problems.length).toBeGreaterThan(0)
})
