import { useState } from 'react'
import { hatchNeeds } from '../../../../trades/strength/hatchHole.ts'
import { QuantityField } from '../../parts/QuantityField.tsx'
import type { Deck } from './useDeck.ts'

const roundTo5 = (v: number) => Math.round(v / 0.005) * 0.005

/** What must be put back round a hole cut in a bay. */
export function Hatch({ deck, bay }: { deck: Deck; bay: number }) {
  const own = deck.inputs.bays[bay]!
  // a lid covers a hole of its own size
  const lid = /hatch|lid/i.test(own.name)
  const [length, setLength] = useState(lid ? own.length : 0.3)
  const [width, setWidth] = useState(lid ? own.width : 0.2)
  const [radius, setRadius] = useState(lid ? roundTo5(0.15 * Math.min(own.length, own.width)) : 0.03)
  const s = own.support
  const across = s.kind === 'stringers' ? Math.max(0, Math.round(width / s.spacing)) : 0
  const needs = hatchNeeds({
    length,
    width,
    t: own.t,
    cornerRadius: radius,
    cut: across,
    stringerInertia: s.kind === 'stringers' ? s.section.inertia : 0,
  })
  const mm = (v: number) => `${Math.round(1e3 * v)} mm`
  const field = (label: string, value: number, set: (v: number) => void, max: number) => (
    <QuantityField
      label={label}
      kind="length"
      unit="mm"
      value={value}
      min={0.005}
      max={max}
      onCommit={(v) => {
        set(v)
        return undefined
      }}
    />
  )
  return (
    <section>
      <h2>{lid ? `The hole under ${own.name}` : `A hatch cut into ${own.name}`}</h2>
      <div className="fields">
        {field('Hatch along', length, setLength, 2)}
        {field('Hatch across', width, setWidth, 1)}
        {field('Corner radius', radius, setRadius, 0.5)}
      </div>
      <p role="status">
        Put back {Math.round(1e6 * needs.doubler)} mm² of section on each side of the hole: a doubler of the
        same sheet {mm(needs.doubler / own.t)} wide. Round its corners to {mm(needs.radiusFrom)} to{' '}
        {mm(needs.radiusTo)}; with {mm(radius)} the stress there is about {needs.concentration.toFixed(1)}{' '}
        times that of the plain sheet.
        {across > 0 &&
          ` It cuts ${across} stringer${across > 1 ? 's' : ''}: each side of the coaming wants a second moment of ${(1e8 * needs.coamingInertia).toFixed(2)} cm⁴.`}
      </p>
      <p className="quiet">
        Practice of small craft and aircraft structures, from memory: cut area and cut stiffness are put back.
      </p>
    </section>
  )
}
