import type { Finding } from '../base/answers/finding.ts'
import { type CraftFiles, giveFiles, readCraft } from '../craft/index.ts'
import { type HullRead, takeHullRead } from '../hull/mesh/namedMesh.ts'
import { findingsApart } from '../whole/look.ts'
import { defineJob } from './job.ts'

export interface FindingsApartInput {
  /** a craft file's text that reads without errors */
  text: string
  /** what the craft names, such as its hull mesh */
  files?: CraftFiles
  /** the hull file as the asking thread read it already */
  hull?: HullRead
}

/** Findings that do not lean on the balance, worked out beside it on another core. */
export const findingsApartJob = defineJob(
  'findings-apart',
  ({ text, files, hull }: FindingsApartInput): Finding[] => {
    const { craft } = readCraft(text)
    if (!craft) throw new RangeError('text: the craft file cannot be read')
    if (files) giveFiles(craft, files)
    if (hull) takeHullRead(hull)
    return findingsApart(craft)
  },
)
