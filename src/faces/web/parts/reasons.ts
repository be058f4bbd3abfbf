import type { Because, Finding } from '../../../base/answers/finding.ts'
import { printed } from '../../../base/answers/sentence.ts'

const bare = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()

/** What drives a finding, without what only says the finding again or stands there twice. */
export function reasonsOf({ says, act, because }: Finding): Because[] {
  const told = [bare(printed(says)), ...(act === undefined ? [] : [bare(printed(act))])]
  return because.filter((b) => {
    const words = bare(printed(b.says))
    if (words === '' || told.some((t) => ` ${t} `.includes(` ${words} `))) return false
    told.push(words)
    return true
  })
}
