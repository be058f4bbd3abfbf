export { type Contradiction, contradictions } from './contradictions.ts'
export { type Decoded, decodeCraftBytes } from './decode.ts'
export { appendLog, type LogEntry, setValue, valueText } from './edit.ts'
export { camel, type Measure, type QuantitySpec, type Spec } from './fields.ts'
export {
  beginHistory,
  canRedo,
  canUndo,
  type History,
  historyFromJson,
  historyToJson,
  record,
  redo,
  redoReason,
  textNow,
  undo,
  undoReason,
} from './history.ts'
export { craftJsonSchema } from './jsonSchema.ts'
export { fieldAt, isQuantitySpec, type ListedField, listFields, quantitiesOf } from './paths.ts'
export { formatProblem, type Problem } from './problem.ts'
export { type CraftReading, type CraftSource, readCraft } from './read.ts'
export { limitsInWords, quantityOf } from './reader.ts'
export { removeValue } from './remove.ts'
export { type Craft, craftFields, currentVersion } from './schema/index.ts'
export { usualSpread } from './spread.ts'
export type { Place, Quantity, Source } from './types.ts'
export { whatIf } from './whatIf.ts'
