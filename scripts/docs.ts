/**
 * Writes what is made from the code: docs/checks.md, docs/reckoners.md and, by craftDocs.ts, the reference
 * part of docs/craft-file.md and schema/craft.schema.json.
 */
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import './craftDocs.ts'
import { allChecks } from '../checks/allChecks.ts'
import { renderChecks } from '../checks/render.ts'
import { renderReckoners } from '../src/whole/reckonerDocs.ts'
import { reckoners } from '../src/whole/reckoners.ts'

const page = (name: string, text: string) =>
  writeFileSync(resolve(import.meta.dirname, '../docs', name), text)
page('checks.md', renderChecks(await allChecks()))
page('reckoners.md', renderReckoners(reckoners))
