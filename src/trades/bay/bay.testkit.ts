/** Bays for tests, over the whole path from the craft file's text. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Finding } from '../../base/answers/finding.ts'
import { readCraft } from '../../craft/index.ts'
import { solveTrade } from '../trade.ts'
import type { BayAnswer } from './bayAnswer.ts'
import type { BayInputs } from './bayFromCraft.ts'
import type { BayLimits } from './bayLimits.ts'
import { bayLimits } from './bayLimits.ts'
import type { BayRun } from './bayRun.ts'
import { bayTrade } from './bayTrade.ts'

/** The text of a demo with another bay section, or none. */
export function demoText(name: string, bay: string): string {
  const text = readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')
  return `${text.replace(/^bay:[\s\S]*?(?=^\S)/m, '')}\n${bay}\n`
}

/** Two engines of 1.6 kW each tied up, 41 cm³ each: a small pair whatever the balance says. */
export const pair: BayRun = {
  states: [
    {
      name: 'tied up',
      speed: 0,
      rotation: 110,
      engines: [{ power: 1600 }, { power: 1600 }],
      flow: 0.014,
    },
  ],
}

export interface Looked {
  inputs: BayInputs
  answer: BayAnswer
  findings: (limits?: BayLimits) => Finding[]
}

/** The bay of a craft file's text; throws what the reader says where it does not read. */
export function bayOf(text: string, run: BayRun = pair): Looked {
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(problems.map((p) => `${p.path}: ${p.found}, expected ${p.expected}`).join('; '))
  const solved = solveTrade(bayTrade, craft, run)
  return { ...solved, findings: (limits = bayLimits) => bayTrade.judge(solved, limits) }
}
