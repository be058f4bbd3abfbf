import { text } from '../fields.ts'
import type { FieldsOf } from '../types.ts'
import { deckSection, hotPartsSection } from './deck.ts'
import { driveSection } from './drive.ts'
import { enginesSection } from './engines.ts'
import { compartmentsSection, foamSection } from './foam.ts'
import { hullSection } from './hull.ts'
import { jetSection } from './jet.ts'
import { logSection } from './log.ts'
import { openingsSection } from './openings.ts'
import { placeSection } from './place.ts'
import { riderSection } from './rider.ts'
import { tanksSection } from './tanks.ts'
import { weightsSection } from './weights.ts'

/** The whole craft file, in the order its sections are written. A new section is a file and a line here. */
export const craftFields = {
  name: text({ label: 'Name', gloss: 'What the craft is called.', maxLength: 100 }),
  about: text({ label: 'About', gloss: 'One line on what it is and what it is for.', optional: true }),
  place: placeSection,
  rider: riderSection,
  engines: enginesSection,
  drive: driveSection,
  jet: jetSection,
  hull: hullSection,
  weights: weightsSection,
  tanks: tanksSection,
  openings: openingsSection,
  foam: foamSection,
  compartments: compartmentsSection,
  deck: deckSection,
  'hot parts': hotPartsSection,
  log: logSection,
} as const

/** The key that carries the version of the file format; it comes first. */
export const versionKey = 'wakewright'
export const currentVersion = 1

/** A craft as read: SI numbers with their ranges and sources. */
export type Craft = FieldsOf<typeof craftFields>
