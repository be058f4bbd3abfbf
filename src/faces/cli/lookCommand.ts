import { styleText } from 'node:util'
import Table from 'cli-table3'
import { type Finding, type Standing, worstFirst } from '../../base/answers/finding.ts'
import { printedFinding } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { type DisplaySystem, displayUnit, formatQuantity } from '../../base/units/format.ts'
import type { Kind } from '../../base/units/kinds.ts'
import { formatProblem } from '../../craft/index.ts'
import { hullRead } from '../../hull/mesh/namedMesh.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { findingsApart, lookWithout, questions } from '../../whole/look.ts'
import type { Balance } from '../../whole/push/balanceTypes.ts'
import { type PushAnswer, pushAnswer } from '../../whole/push/pushAnswer.ts'
import { inchLook, metricLook } from '../../whole/push/shown.ts'
import { beside } from './beside.ts'
import { fileStore } from './engineStore.ts'
import { figuresText } from './figuresText.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { progressLine } from './progress.ts'
import { readCraftFile } from './readCraftFile.ts'

export interface LookOptions {
  json?: boolean
  draw?: boolean
  question?: string
  units: string
}

/** `wakewright look`: every finding of a craft file. Exit code 1 when one says stop. */
export async function look(file: string, options: LookOptions): Promise<number> {
  if (options.units !== 'metric' && options.units !== 'inch')
    throw new BadInput([`look: --units "${options.units}" is not metric or inch`])
  if (options.question !== undefined && !questions.includes(options.question as never))
    throw new BadInput([`look: --question "${options.question}" is not one of ${questions.join(', ')}`])
  const { craft, text, warnings, files } = readCraftFile(file)
  // floating and strength on the second core while this one balances engines, jet and hull
  // and a hull file is read and checked by one of them
  const hull = hullRead(craft)
  const apart = beside('findings-apart', { text, files, ...(hull ? { hull } : {}) })
  const line = progressLine()
  const engines = answerEngines(craft, { store: fileStore(), progress: line.show })
  line.end()
  const { findings: driven, balance } = lookWithout(craft, engines ? { engines } : {})
  const all = worstFirst([...driven, ...((await apart) ?? findingsApart(craft))])
  const findings = options.question === undefined ? all : all.filter((f) => f.question === options.question)
  const code = findings.some((f) => f.standing === 'stop') ? exit.stop : exit.fine
  const answer = balance && pushAnswer(craft, balance, options.units === 'inch' ? inchLook : metricLook)
  if (options.json) {
    printJson({
      ...(answer ? { answer } : {}),
      findings: findings.map((f) => printedFinding(f)),
      ...(balance ? { balance: flatBalance(balance) } : {}),
      warnings,
    })
    return code
  }
  for (const w of warnings) process.stderr.write(`${formatProblem(w)}\n`)
  print(`\n${styleText('bold', craft.name)}${craft.about ? `: ${craft.about}` : ''}\n`)
  if (options.question === undefined || options.question === 'push')
    print(inShort(answer, all, options.units))
  for (const f of findings) print(findingText(f, options.units))
  // the operating table is Push's; another question's findings stand alone
  if (balance && (options.question === undefined || options.question === 'push'))
    print(operatingText(balance, options.units))
  if (options.draw) {
    const colour = process.stdout.isTTY === true && process.env['NO_COLOR'] === undefined
    print(figuresText(craft, balance, options.units, process.stdout.columns ?? 96, colour))
  }
  return code
}

/** The operating table at the top level beside the operating points, for other programs. SI; rpm is rev/min. */
function flatBalance(balance: Balance) {
  const { curve, ...rest } = balance
  return {
    units: {
      speed: 'm/s',
      rpm: 'rev/min',
      rotation: 'rev/s',
      thrust: 'N',
      drag: 'N',
      torque: 'N·m at the impeller',
      engineTorque: 'N·m, all engines of the shaft, at the crankshaft (where rpm is)',
      flow: 'm³/s',
      trim: 'rad',
      riderAt: 'm',
      power: 'W',
    },
    ...curve,
    ...rest,
  }
}

/** What a builder came for, before the list: how it goes, the change that buys most, how much else was found. */
function inShort(answer: PushAnswer | undefined, findings: readonly Finding[], units: DisplaySystem): string {
  const lines = answer
    ? [styleText('bold', answer.says), answer.range && `Likely range ${answer.range}.`, answer.confidence]
    : []
  const change = findings.find((f) => f.id === 'push.change')
  if (change) lines.push(printed(change.says, units))
  const counted = (['stop', 'watch', 'unknown', 'good'] as const).flatMap((standing) => {
    const n = findings.filter((f) => f.standing === standing).length
    return n === 0 ? [] : [`${n} ${standingWord[standing]}`]
  })
  lines.push(`Found, worst first: ${counted.join(', ')}.`)
  return `${lines.filter((line) => line).join('\n')}\n`
}

const standingWord: Record<Standing, string> = {
  stop: 'to stop for',
  watch: 'to watch',
  unknown: 'not known yet',
  good: 'good',
}

const marks: Record<Standing, string> = {
  good: styleText('green', '✓ good   '),
  watch: styleText('yellow', '! watch  '),
  stop: styleText('red', '✗ stop   '),
  unknown: styleText('cyan', '? unknown'),
}

const kindOfUnit: Record<string, readonly [Kind, string]> = {
  m: ['length', 'mm'],
  'm/s': ['speed', 'km/h'],
  N: ['force', 'N'],
  'rev/s': ['rotation', 'rpm'],
}

export function findingText(f: Finding, units: DisplaySystem): string {
  const lines = [`${marks[f.standing]} ${printed(f.says, units)}`]
  const known = f.unit === undefined ? undefined : kindOfUnit[f.unit]
  if (units === 'inch' && known && f.value !== undefined) {
    const unit = displayUnit(known[0], 'inch', known[1])
    const shown = [f.value, f.low, f.high].flatMap((x) =>
      x === undefined ? [] : [formatQuantity(x, known[0], unit)],
    )
    lines.push(`          = ${shown[0]}${shown.length === 3 ? ` (${shown[1]} to ${shown[2]})` : ''}`)
  }
  for (const b of f.because) lines.push(styleText('dim', `          · ${printed(b.says, units)}`))
  if (f.measureNext)
    lines.push(
      `          next: ${f.measureNext.what}, with ${f.measureNext.with}, ${f.measureNext.minutes} minutes`,
    )
  return lines.join('\n')
}

/** to the nearest whole unit: a table of forces reads better without tails */
const whole = (x: number, kind: Kind, unit: string) =>
  Number.isFinite(x) ? `${Math.round(fromSi(x, kind, unit)) + 0} ${unit}` : '—'

function operatingText(b: Balance, units: DisplaySystem): string {
  const force = displayUnit('force', units, 'N')
  const speed = displayUnit('speed', units, 'km/h')
  const table = new Table({
    head: ['speed', 'engine', 'thrust', 'drag', 'trim', 'rider at'],
    style: { head: [], border: [] },
    colAligns: ['right', 'right', 'right', 'right', 'right', 'right'],
  })
  const { curve } = b
  const every = Math.max(1, Math.round(curve.speed.length / 14))
  for (let i = 0; i < curve.speed.length; i += every)
    table.push([
      formatQuantity(curve.speed[i]!, 'speed', speed),
      formatQuantity(curve.rpm[i]! / 60, 'rotation', 'rpm'),
      whole(curve.thrust[i]!, 'force', force),
      whole(curve.drag[i]!, 'force', force),
      Number.isFinite(curve.trim[i]!)
        ? `${(fromSi(curve.trim[i]!, 'angle', 'deg') + 0).toFixed(1).replace('-0.0', '0.0')} deg`
        : '—',
      formatQuantity(curve.riderAt[i]!, 'length', displayUnit('length', units, 'm')),
    ])
  return `\n${table.toString()}`
}
