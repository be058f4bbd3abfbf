import { expect, test } from 'vitest'
import { inNewtons } from '../../../base/answers/amounts.ts'
import type { Because, Finding } from '../../../base/answers/finding.ts'
import { say } from '../../../base/answers/sentence.ts'
import { reasonsOf } from './reasons.ts'

const finding = (because: Because[], more: Partial<Finding> = {}): Finding => ({
  id: 'x',
  question: 'push',
  says: say`The pull is ${inNewtons(500)}, too little for the hump.`,
  standing: 'watch',
  because,
  sources: [],
  ...more,
})

test('what only says the finding again is no reason, whatever its letters and stops', () => {
  const reason = { says: 'the intake is small' }
  const kept = reasonsOf(finding([{ says: say`the pull is ${inNewtons(500)}` }, reason]))
  expect(kept).toEqual([reason])
})

test('a reason stands once, and the act is no reason for itself', () => {
  const reason = { says: 'the intake is small' }
  expect(reasonsOf(finding([reason, { says: 'The intake is small.' }]))).toEqual([reason])
  expect(
    reasonsOf(finding([{ says: 'open it by 10 %' }, reason], { act: 'open it by 10 % and try' })),
  ).toEqual([reason])
})

test('a part of a word is not the word', () => {
  const reason = { says: 'ump' }
  expect(reasonsOf(finding([reason]))).toEqual([reason])
})
