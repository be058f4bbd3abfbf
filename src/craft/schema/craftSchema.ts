import type { FieldsOf } from '../craftTypes.ts'
import { choice, text } from '../fields.ts'
import { baySection } from './bayFields.ts'
import { cableSection } from './cableFields.ts'
import { cordSection } from './cordFields.ts'
import { deckSection, hotPartsSection } from './deckFields.ts'
import { driveSection } from './driveFields.ts'
import { enginesSection } from './enginesFields.ts'
import { fittedSection } from './fittedFields.ts'
import { compartmentsSection, foamSection } from './foamFields.ts'
import { fuelSection } from './fuelFields.ts'
import { hullSection } from './hullFields.ts'
import { jetSection } from './jetFields.ts'
import { logSection } from './logFields.ts'
import { mountsSection } from './mountsFields.ts'
import { openingsSection } from './openingsFields.ts'
import { placeSection } from './placeFields.ts'
import { printerSection } from './printerFields.ts'
import { riderSection } from './riderFields.ts'
import { shaftSection } from './shaftFields.ts'
import { stockSection } from './stockFields.ts'
import { tanksSection } from './tanksFields.ts'
import { weightsSection } from './weightsFields.ts'

/** The whole craft file, in the order its sections are written. A new section is a file and a line here. */
export const craftFields = {
  name: text({ label: 'Name', gloss: 'What the craft is called.', maxLength: 100 }),
  about: text({ label: 'About', gloss: 'One line on what it is and what it is for.', optional: true }),
  wants: choice(['pull', 'speed', 'plane'], {
    label: 'Wants',
    gloss:
      'What counts most when an impeller is chosen: pull, top speed, or getting on the plane. Left out: over the hump first, then pull and speed alike.',
    optional: true,
  }),
  place: placeSection,
  rider: riderSection,
  engines: enginesSection,
  drive: driveSection,
  shaft: shaftSection,
  mounts: mountsSection,
  jet: jetSection,
  hull: hullSection,
  weights: weightsSection,
  tanks: tanksSection,
  fuel: fuelSection,
  openings: openingsSection,
  foam: foamSection,
  compartments: compartmentsSection,
  deck: deckSection,
  'hot parts': hotPartsSection,
  bay: baySection,
  cord: cordSection,
  cable: cableSection,
  printer: printerSection,
  fitted: fittedSection,
  stock: stockSection,
  log: logSection,
} as const

/** The key that carries the version of the file format; it comes first. */
export const versionKey = 'wakewright'
export const currentVersion = 1

/** A craft as read: SI numbers with their ranges and sources. */
export type Craft = FieldsOf<typeof craftFields>
