import { useState } from 'react'
import { inCm4, inCount, inMm, inMm2, inTimes } from '../../../../base/answers/amounts.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { hatchNeeds } from '../../../../trades/strength/hatchHole.ts'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { Says } from '../../parts/Says.tsx'
import { shownUnit } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import type { Deck } from './useDeck.ts'

const roundTo5 = (v: number) => Math.round(v / 0.005) * 0.005

const isLid = (name: string) => /hatch|lid/i.test(name)

/** What the fold is called: a lid covers a hole already, another bay would have one cut. */
export function hatchTitle(deck: Deck, bay: number): string {
  const { name } = deck.inputs.bays[bay]!
  return isLid(name) ? `The hole under ${name}` : `A hatch cut into ${name}`
}

/** What must be put back round a hole cut in a bay. */
export function Hatch({ deck, bay }: { deck: Deck; bay: number }) {
  const own = deck.inputs.bays[bay]!
  const units = useApp((s) => s.units)
  // a lid covers a hole of its own size
  const lid = isLid(own.name)
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
  const field = (label: string, value: number, set: (v: number) => void, max: number) => (
    <QuantityField
      label={label}
      kind="length"
      unit={shownUnit('length', units, 'mm')}
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
      <div className="fields">
        {field('Hatch along', length, setLength, 2)}
        {field('Hatch across', width, setWidth, 1)}
        {field('Corner radius', radius, setRadius, 0.5)}
      </div>
      <p role="status">
        <Says
          says={say`Put back ${inMm2(needs.doubler)} of section on each side of the hole: a doubler of the same sheet ${inMm(needs.doubler / own.t)} wide. Round its corners to ${inMm(needs.radiusFrom)} to ${inMm(needs.radiusTo)}; with ${inMm(radius)} the stress there is about ${inTimes(needs.concentration, 0.1)} times that of the plain sheet.`}
        />
        {across > 0 && (
          <>
            {' '}
            <Says
              says={say`It cuts ${inCount(across)} stringer${across > 1 ? 's' : ''}: each side of the coaming wants a second moment of ${inCm4(needs.coamingInertia)}.`}
            />
          </>
        )}
      </p>
      <p className="quiet">
        Practice of small craft and aircraft structures, from memory: cut area and cut stiffness are put back.
      </p>
    </section>
  )
}
