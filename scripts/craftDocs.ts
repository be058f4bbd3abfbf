/**
 * Writes what is made from the field tables: schema/craft.schema.json and the reference part of
 * docs/craft-file.md. Part of `npm run docs`; run it after a change of src/craft/schema.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { withReference } from '../src/craft/fieldReference.ts'
import { craftJsonSchema } from '../src/craft/jsonSchema.ts'

const root = resolve(import.meta.dirname, '..')
const page = resolve(root, 'docs/craft-file.md')

mkdirSync(resolve(root, 'schema'), { recursive: true })
writeFileSync(resolve(root, 'schema/craft.schema.json'), `${JSON.stringify(craftJsonSchema(), null, 2)}\n`)
writeFileSync(page, withReference(readFileSync(page, 'utf8')))
