import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inKg, inMetres } from '../../../../base/answers/amounts.ts'
import { type Sentence, say } from '../../../../base/answers/sentence.ts'
import { oftenForgotten, scaleProcedure, weightSum } from '../../../../hull/aboard/masses.ts'
import { aboardOf } from '../../../../trades/float/input.ts'
import { listMatching, type ScaleResult, weighed } from '../../../../trades/float/scales.ts'
import { inLook, type Look, massIn, massUnit, plain } from '../../../../whole/push/shown.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { Says } from '../../parts/Says.tsx'
import { app } from '../../state/app.ts'
import { shownUnit } from '../../state/craftFile.ts'
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
          massIn(w.mass, look, 1),
          massIn(w.give ?? Number.NaN, look, 1),
          length(w.at[0]),
          length(w.at[1]),
          length(w.at[2]),
        ],
      })),
      {
        key: -1,
        cells: [
          `all but the rider${word}`,
          massIn(sum.mass, look, 1),
          massIn(sum.give, look, 1),
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
          { head: 'Mass', unit: massUnit(look) },
          { head: '±', unit: massUnit(look) },
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
  const units = useApp((s) => s.units)
  const [read, setRead] = useState<Partial<Record<Read, number>>>({ giveReading: 0.2 })
  const field = ([id, label, kind, unit]: (typeof asked)[number] | (typeof askedTilted)[number]) => (
    <QuantityField
      key={id}
      label={label}
      kind={kind}
      unit={shownUnit(kind, units, unit)}
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
          <li key={step}>
            <Says says={step} />
          </li>
        ))}
      </ol>
      <div className="fields">{asked.map(field)}</div>
      <h3>With the bow raised, for the height (may be left out)</h3>
      <div className="fields">{askedTilted.map(field)}</div>
      <p role="status">
        <Says says={result ? resultWords(result) : String(answer)} />
      </p>
      {typeof match === 'string' && <p>{match}</p>}
      {match && typeof match === 'object' && (
        <p>
          <Says
            says={say`To agree with it, ${side.input.weights[match.index]!.name} would weigh ${inKg(match.mass)} at ${inMetres(match.at[0])} forward and ${inMetres(match.at[2])} up${side.input.tanks?.length ? '; what is in the tanks comes on top' : ''}.`}
          />{' '}
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

function resultWords(r: ScaleResult): Sentence {
  const metres = (v: number) => inMetres(v, 0.001)
  const up = r.up === undefined ? '' : say`, and ${metres(r.up)} ± ${metres(r.giveUp ?? 0)} above the keel`
  return say`It weighs ${inKg(r.mass)} ± ${inKg(r.giveMass)}; its centre is ${metres(r.forward)} ± ${metres(r.giveForward)} forward of the transom${up}.`
}
