import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { oftenForgotten, scaleProcedure, weightSum } from '../../../../hull/aboard/masses.ts'
import { aboardOf } from '../../../../trades/float/input.ts'
import { listMatching, type ScaleResult, weighed } from '../../../../trades/float/scales.ts'
import { inLook, type Look, plain } from '../../../../whole/push/shown.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useFloat.ts'

interface Props {
  side: Side
  tried: Side | undefined
  look: Look
}

/** The weights list with what is not sure about it, and the weighing that finds the true centre. */
export function Weights({ side, tried, look }: Props) {
  const places = look.length === 'mm' ? 0 : 1
  const length = (v: number) => plain(inLook(v, 'length', look), places)
  const rows = (s: Side, word: string) => {
    const all = aboardOf(s.input)
    const sum = weightSum(all)
    return [
      ...all.map((w, i) => ({
        key: i,
        cells: [
          `${w.name}${word}`,
          plain(w.mass, 1),
          plain(w.give ?? Number.NaN, 1),
          length(w.at[0]),
          length(w.at[1]),
          length(w.at[2]),
        ],
      })),
      {
        key: -1,
        cells: [
          `all but the rider${word}`,
          plain(sum.mass, 1),
          plain(sum.give, 1),
          ...[0, 1, 2].map((k) => `${length(sum.centre[k]!)} ± ${length(sum.giveCentre[k]!)}`),
        ],
      },
    ]
  }
  const own = rows(side, '')
  const other = tried ? rows(tried, ', tried') : []
  const changed = other.filter((r, i) => r.cells.slice(1).join() !== own[i]?.cells.slice(1).join())
  return (
    <section className="weights">
      <NumbersTable
        caption="Weights"
        columns={[
          { head: 'Item' },
          { head: 'Mass', unit: 'kg' },
          { head: '±', unit: 'kg' },
          { head: 'Forward', unit: look.length },
          { head: 'To port', unit: look.length },
          { head: 'Up', unit: look.length },
        ]}
        rows={[...own, ...changed].map((r) => r.cells)}
      />
      <p>Home lists are often 5 to 10 % light. What they leave out: {oftenForgotten.join('; ')}.</p>
      <Weighing side={side} />
    </section>
  )
}

/** What a builder reads at the two hooks; a field of its own each. */
const asked = [
  ['aftAt', 'After hook, forward of the transom', 'length', 'm'],
  ['aftReads', 'Scale reads there', 'mass', 'kg'],
  ['foreAt', 'Fore hook, forward of the transom', 'length', 'm'],
  ['foreReads', 'Scale reads there, fore', 'mass', 'kg'],
  ['giveReading', 'Scale is good to ±', 'mass', 'kg'],
] as const
const askedTilted = [
  ['tilt', 'Bow raised by', 'angle', 'deg'],
  ['tiltAft', 'After scale now reads', 'mass', 'kg'],
  ['tiltFore', 'Fore scale now reads', 'mass', 'kg'],
  ['hooks', 'Hooks above the keel', 'length', 'm'],
] as const
type Read = (typeof asked)[number][0] | (typeof askedTilted)[number][0]

function Weighing({ side }: { side: Side }) {
  const readOnly = useApp((s) => s.role === 'follower')
  const [read, setRead] = useState<Partial<Record<Read, number>>>({ giveReading: 0.2 })
  const field = ([id, label, kind, unit]: (typeof asked)[number] | (typeof askedTilted)[number]) => (
    <QuantityField
      key={id}
      label={label}
      kind={kind}
      unit={unit}
      value={read[id]}
      min={id === 'hooks' ? -1 : 0}
      max={kind === 'angle' ? Math.PI / 4 : kind === 'mass' ? 1000 : 10}
      onCommit={(value) => {
        setRead((before) => ({ ...before, [id]: value }))
        return undefined
      }}
    />
  )
  const answer = resultOf(read)
  const result = typeof answer === 'object' ? answer : undefined
  const match = result && matchOf(side, result)
  const use = () => {
    if (!match || typeof match === 'string' || !result) return
    const at = `weights.${match.index}`
    const places = result.up === undefined ? [0] : [0, 2]
    app.tryAll(
      [
        [`${at}.mass`, round(match.mass, 2), `${round(match.mass, 2)} kg`],
        ...places.map(
          (k) => [`${at}.at.${k}`, round(match.at[k]!, 3), `${round(match.at[k]!, 3)} m`] as const,
        ),
      ],
      'use the weighing',
    )
  }
  return (
    <details className="weighing">
      <summary>Find the true centre of gravity with a luggage scale, about 20 minutes</summary>
      <ol>
        {scaleProcedure.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <div className="fields">{asked.map(field)}</div>
      <h3>With the bow raised, for the height (may be left out)</h3>
      <div className="fields">{askedTilted.map(field)}</div>
      <p role="status">{result ? resultWords(result) : String(answer)}</p>
      {typeof match === 'string' && <p>{match}</p>}
      {match && typeof match === 'object' && (
        <p>
          To agree with it, {side.input.weights[match.index]!.name} would weigh {match.mass.toFixed(1)} kg at{' '}
          {match.at[0].toFixed(2)} m forward and {match.at[2].toFixed(2)} m up
          {side.input.tanks?.length ? '; what is in the tanks comes on top' : ''}.{' '}
          <Button isDisabled={readOnly} onPress={use}>
            Try this
          </Button>
        </p>
      )}
    </details>
  )
}

const round = (v: number, places: number) => Number(v.toFixed(places))

function resultOf(read: Partial<Record<Read, number>>): ScaleResult | string {
  const { aftAt, aftReads, foreAt, foreReads, giveReading = 0.2, tilt, tiltAft, tiltFore, hooks } = read
  if (aftAt === undefined || aftReads === undefined || foreAt === undefined || foreReads === undefined)
    return 'Fill in both hooks and both readings.'
  const tilted =
    tilt !== undefined && tiltAft !== undefined && tiltFore !== undefined
      ? { tilted: { angle: tilt, aft: tiltAft, fore: tiltFore, hooks: hooks ?? 0 } }
      : {}
  try {
    return weighed({
      aft: { at: aftAt, reads: aftReads },
      fore: { at: foreAt, reads: foreReads },
      giveReading,
      giveTape: 0.005,
      ...tilted,
    })
  } catch (error) {
    return `Not worked out: ${(error as Error).message}.`
  }
}

function matchOf(side: Side, result: ScaleResult) {
  if (side.craft.weights.length === 0)
    return 'The file lists no weights yet; add one on the Craft page to use this.'
  try {
    return listMatching(side.input.weights, result)
  } catch (error) {
    return `The list cannot be brought to agree: ${(error as Error).message}.`
  }
}

function resultWords(r: ScaleResult): string {
  const up =
    r.up === undefined ? '' : `, and ${r.up.toFixed(3)} m ± ${(r.giveUp ?? 0).toFixed(3)} m above the keel`
  return `It weighs ${r.mass.toFixed(1)} kg ± ${r.giveMass.toFixed(1)} kg; its centre is ${r.forward.toFixed(3)} m ± ${r.giveForward.toFixed(3)} m forward of the transom${up}.`
}
