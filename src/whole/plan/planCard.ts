/** The plan on paper: a card to print, with boxes to write the readings into; and the same as plain text. */
import { inMinutes } from '../../base/answers/amounts.ts'
import { printed, type Sentence, say } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { PaperName } from '../../drawing/papers.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { writtenPages } from '../../drawing/writtenPage.ts'
import type { PlanStep, RunPlan } from './runPlan.ts'

/** boxes a step leaves to write in */
export const boxesOf = (step: PlanStep): readonly string[] =>
  step.id === 'way'
    ? ['there', 'back', 'what else']
    : step.id === 'cut' || step.id === 'choke'
      ? ['time of the clip', 'what was heard']
      : ['time of the clip', 'scale 1', 'scale 2', 'scale 3', 'what else']

export const relative =
  'Steps of one run are compared with each other first: that tells far smaller differences than the ranges beside them, which are the model’s.'

const minutesSays = (step: PlanStep): Sentence => inMinutesOf(60 * step.minutes)
const inMinutesOf = (seconds: number): Sentence => say`${inMinutes(seconds, 0.5)}`

/** The card, as many pages as it takes. */
export function planCard(
  plan: RunPlan,
  name: string,
  units: DisplaySystem = 'metric',
  paper: PaperName = 'A4',
): Sheet[] {
  const show = (s: Sentence) => printed(s, units)
  const page = writtenPages(
    `Plan of the run, ${name}`,
    'Figures are the model’s; engines, ropes, fuel and water hurt: follow the rules of the place.',
    { paper },
  )
  page.words(`Plan of the run: ${name}`, { size: 6, bold: true })
  page.gap(1)
  page.words(show(plan.says))
  page.words(relative, { quiet: true })
  page.boxes(['date', 'wind, water', 'rider', 'fuel and mix'])
  plan.steps.forEach((step, i) => {
    page.heading(`${i + 1}. ${show(step.act)} (${show(minutesSays(step))})`)
    for (const caution of step.cautions) page.words(caution, { indent: 5, sign: '!' })
    page.words(`Read: ${step.read}.`, { indent: 5 })
    for (const expected of step.expected) page.words(show(expected.says), { indent: 5, size: 2.9, sign: '·' })
    page.gap(1)
    page.boxes(boxesOf(step))
  })
  page.heading('Where the phone and the rope go')
  for (const words of plan.phone) page.words(show(words), { indent: 5, sign: '·' })
  page.heading('Before casting off')
  for (const words of plan.checklist) page.tick(show(words))
  page.heading('To take along')
  for (const words of plan.kit) page.tick(words)
  return page.pages()
}

/** The plan as plain text. */
export function planText(plan: RunPlan, units: DisplaySystem = 'metric'): string {
  const show = (s: Sentence) => printed(s, units)
  const lines = [show(plan.says), relative, '']
  plan.steps.forEach((step, i) => {
    lines.push(`${i + 1}. ${show(step.act)} (${show(minutesSays(step))})`)
    for (const caution of step.cautions) lines.push(`   ! ${caution}`)
    lines.push(`   read: ${step.read}`)
    for (const expected of step.expected) lines.push(`   · ${show(expected.says)}`)
  })
  lines.push(
    '',
    ...plan.phone.map(show),
    '',
    'Before casting off:',
    ...plan.checklist.map((c) => `  [ ] ${show(c)}`),
  )
  lines.push('', 'To take along:', ...plan.kit.map((k) => `  [ ] ${k}`))
  return lines.join('\n')
}
