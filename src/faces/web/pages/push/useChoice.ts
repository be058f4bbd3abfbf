import { useMemo } from 'react'
import type { Sentence } from '../../../../base/answers/sentence.ts'
import { type Choice, choiceOf, startOf } from '../../../../whole/push/designChoice.ts'
import type { DesignAnswer } from '../../../../whole/push/designTypes.ts'
import { type Craft, triedValues } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { hullFilesOf } from '../../state/hullFiles.ts'
import { cancelSearch, type Search, startSearch, useSearch } from '../../work/searches.ts'

export interface Choosing {
  search: Search<'design-search'> | undefined
  answer: DesignAnswer | undefined
  choice: Choice | undefined
  start: () => void
  cancel: () => void
}

/**
 * The search for impeller and nozzle on the craft as it is, with whatever is tried of the rest. Trying what was found leaves the search
 * as it is; it goes on while another page is looked at, and called off it keeps the best so far.
 */
export function useChoice(craft: Craft): Choosing {
  const text = useApp((s) => s.work?.goodText ?? '')
  const tried = useApp((s) => s.work?.tried)
  const solved = useApp((s) => (s.looked && s.looked.craft === s.craft ? s.looked.solved : undefined))
  const from = useMemo(() => startOf(triedValues(tried ?? [])), [tried])
  const key = JSON.stringify([text, from, hullFilesOf(craft).filesAre])
  const search = useSearch('design-search', key)
  const answer = search?.answer
  const choice = useMemo(() => answer && choiceOf(craft, answer), [craft, answer])
  return {
    search,
    answer,
    choice,
    start: () =>
      startSearch('design-search', key, {
        text,
        tried: from,
        ...hullFilesOf(craft),
        ...(solved ? { solved: [...solved] } : {}),
      }),
    cancel: () => cancelSearch('design-search', key),
  }
}

/** The search in a few words, for the line of its fold. */
export function choiceBrief({ search, choice }: Choosing): Sentence {
  if (!choice) return search?.running ? 'being searched…' : 'pitch, blades and nozzle, not searched yet'
  return choice.brief
}
