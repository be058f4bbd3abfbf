import { styleText } from 'node:util'
import Table from 'cli-table3'
import type { Decision } from '../../base/answers/decision.ts'
import type { Finding, Standing } from '../../base/answers/finding.ts'
import { printedFinding } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import { fromSi } from '../../base/units/convert.ts'
import { type DisplaySystem, displayUnit, formatQuantity } from '../../base/units/format.ts'
import type { Kind } from '../../base/units/kinds.ts'
import { formatProblem } from '../../craft/index.ts'
import { hullRead } from '../../hull/mesh/namedMesh.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { findingsApart, finished, leaning, questions } from '../../whole/look.ts'
import type { Balance } from '../../whole/push/balanceTypes.ts'
import { beside } from './beside.ts'
import { fileStore } from './engineStore.ts'
import { figuresText, inColour } from './figuresText.ts'
import { lookScreenText } from './lookScreenText.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { progressLine } from './progress.ts'
import { type CraftOnDisk, readCraftFile } from './readCraftFile.ts'
import { craftWith } from './tryValues.ts'

export interface LookOptions {
  json?: boolean
  draw?: boolean
  all?: boolean
  question?: string
  /** simulate engines finely, where that is not kept yet */
  fine?: boolean
  units: string
}

/** `wakewright look`: what to do about a craft, on one screen; with --all everything that was found. Exit code 1 when one says stop. */
export async function look(file: string, options: LookOptions): Promise<number> {
  return lookAtCraft(readCraftFile(file), unitsOf('look', options))
}

/** `wakewright try`: the same with values put in; nothing is written. */
export async function tryCommand(
  file: string,
  values: readonly string[],
  options: LookOptions,
): Promise<number> {
  const known = unitsOf('try', options)
  return lookAtCraft(craftWith(file, readCraftFile(file), values), known)
}

type KnownOptions = Omit<LookOptions, 'units'> & { units: DisplaySystem }

export function unitsOf(command: string, options: LookOptions): KnownOptions {
  const { units, question } = options
  if (units !== 'metric' && units !== 'inch')
    throw new BadInput([`${command}: --units "${units}" is not metric or inch`])
  if (question !== undefined && !questions.includes(question as never))
    throw new BadInput([`${command}: --question "${question}" is not one of ${questions.join(', ')}`])
  return { ...options, units }
}

async function lookAtCraft(on: CraftOnDisk, options: KnownOptions): Promise<number> {
  const { craft, text, warnings, files } = on
  // floating and strength on the second core while this one balances engines, jet and hull
  // and a hull file is read and checked by one of them
  const hull = hullRead(craft)
  const apart = beside('findings-apart', { text, files, ...(hull ? { hull } : {}) })
  const line = progressLine()
  const engines = answerEngines(craft, {
    store: fileStore(),
    coarse: !options.fine,
    progress: line.show,
  })
  line.end()
  const part = leaning(craft, engines ? { engines } : {})
  const whole = finished(craft, part, (await apart) ?? findingsApart(craft))
  const { balance } = whole
  const asked = (f: Finding) => options.question === undefined || f.question === options.question
  const findings = whole.findings.filter(asked)
  const code = findings.some((f) => f.standing === 'stop') ? exit.stop : exit.fine
  if (options.json) {
    printJson({
      ...(balance ? { answer: answerOf(whole.findings) } : {}),
      decisions: whole.decisions.map(plainDecision),
      findings: findings.map((f) => printedFinding(f)),
      ...(balance ? { balance: flatBalance(balance) } : {}),
      warnings,
    })
    return code
  }
  for (const w of warnings) process.stderr.write(`${formatProblem(w)}\n`)
  print(`\n${styleText('bold', craft.name)}${craft.about ? `: ${craft.about}` : ''}\n`)
  if (options.question !== undefined && findings.length === 0)
    print(`Nothing is worked out yet about "${options.question}".`)
  if (options.all || options.question !== undefined) {
    for (const f of findings) print(findingText(f, options.units))
    // the operating table is Push's; another question's findings stand alone
    if (balance && (options.question === undefined || options.question === 'push'))
      print(operatingText(balance, options.units))
  } else print(lookScreenText(whole, options.units))
  if (options.draw) {
    print(figuresText(craft, balance, options.units, process.stdout.columns ?? 96, inColour()))
  }
  return code
}

/** How it goes, for programs: the headline's sentence, its range and where the doubt comes from. */
function answerOf(findings: readonly Finding[]) {
  const f = findings.find((one) => one.id === 'push.headline')
  if (!f) return undefined
  const { says, because, low, high, unit } = printedFinding(f)
  return {
    says,
    ...(low === undefined || high === undefined ? {} : { low, high, unit }),
    confidence: because.map((b) => b.says).join('; '),
  }
}

/** A decision with its sentences in words; gains stay SI. */
function plainDecision(d: Decision) {
  return { ...d, says: printed(d.says), ...(d.act === undefined ? {} : { act: printed(d.act) }) }
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

const marks: Record<Standing, string> = {
  good: styleText('green', '✓ good   '),
  watch: styleText('yellow', '! watch  '),
  stop: styleText('red', '✗ stop   '),
  unknown: styleText('cyan', '? unknown'),
}

export function findingText(f: Finding, units: DisplaySystem): string {
  const lines = [`${marks[f.standing]} ${printed(f.says, units)}`]
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
