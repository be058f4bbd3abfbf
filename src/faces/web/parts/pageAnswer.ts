import type { Finding } from '../../../base/answers/finding.ts'
import { printed, type Sentence, whole } from '../../../base/answers/sentence.ts'

/** The answer of a page as it stands above its picture. */
export interface PageAnswer {
  says: Sentence
  range?: Sentence | undefined
  confidence?: Sentence | undefined
}

/** What a tried answer changes, for the log. */
export function changeOf(now: Sentence, tried: Sentence | undefined): string {
  const [was, is] = [printed(now), tried === undefined ? '' : printed(tried)]
  return is === '' || is === was ? '' : `${is} Was: ${was}`
}

/** A headline as the page's answer: its likely range is in the sentence, what it rests on is its first reason. */
export function answerOf(headline: Finding | undefined): PageAnswer {
  if (!headline) return { says: 'Being worked out…' }
  const rests = headline.because[0]?.says
  return { says: headline.says, confidence: rests === undefined ? undefined : whole(rests) }
}
