/** Writes the pages that are made from the code: docs/checks.md and docs/reckoners.md. */
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { allChecks } from '../checks/index.ts'
import { renderChecks } from '../checks/render.ts'
import { renderReckoners } from '../src/registry/reckonerDocs.ts'
import { reckoners } from '../src/registry/reckoners.ts'

const page = (name: string, text: string) =>
  writeFileSync(resolve(import.meta.dirname, '../docs', name), text)
page('checks.md', renderChecks(await allChecks()))
page('reckoners.md', renderReckoners(reckoners))
