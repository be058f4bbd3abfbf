import { useCallback, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { inKg, inMinutes } from '../../../../base/answers/amounts.ts'
import type { MadePart } from '../../../../base/answers/madePart.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { handsOn } from '../../../../whole/make/partsOfCraft.ts'
import { type PatternFormat, partSheet, patternFile } from '../../../../whole/make/patternFiles.ts'
import { Says } from '../../parts/Says.tsx'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { useApp } from '../../state/hooks.ts'
import { saveFile } from '../../state/openedFiles.ts'

const formats: readonly { format: PatternFormat; word: string }[] = [
  { format: 'pdf', word: 'Pages to print' },
  { format: 'svg', word: 'SVG' },
  { format: 'dxf', word: 'DXF' },
]

/** One part: what it is, how long it takes, its pattern, its files and its steps. */
function PartCard({ part }: { part: MadePart }) {
  const system = useApp((s) => s.units)
  const [fault, setFault] = useState<string>()
  const sheet = useMemo(() => partSheet(part, system), [part, system])
  const draw = useCallback(() => sheet!, [sheet])
  const save = async (format: PatternFormat) => {
    try {
      const paper = system === 'inch' ? 'Letter' : 'A4'
      const bytes = await patternFile(part, format, { paper, system })
      if (bytes) await saveFile(`${part.id}.${format}`, bytes as Uint8Array<ArrayBuffer>)
      setFault(undefined)
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      setFault(error.message)
    }
  }
  const { low, high } = handsOn([part])
  return (
    <details className="more" data-part={part.id}>
      <summary>
        <h3>{part.title}</h3>
        <span className="result">
          <Says says={part.says} />
        </span>
      </summary>
      <div className="within">
        {part.findings.map((f) => (
          <p key={f.id}>
            <Says says={f.says} />
          </p>
        ))}
        {part.mass !== undefined && (
          <p>
            <Says
              says={say`${inKg(part.mass, 0.001)} of ${part.material}, ${inMinutes(low)} to ${inMinutes(high)} by hand.`}
            />
          </p>
        )}
        {sheet && (
          <>
            <SheetSvg draw={draw} />
            {/* biome-ignore lint/a11y/useSemanticElements: buttons of one part, not fields */}
            <div role="group" aria-label={`Save ${part.title}`}>
              {formats.map(({ format, word }) => (
                <Button
                  key={format}
                  className="plain"
                  aria-label={`${word} of ${part.title}`}
                  onPress={() => void save(format)}
                >
                  {word}
                </Button>
              ))}
            </div>
            {fault && <p role="alert">{fault}</p>}
          </>
        )}
        <ol className="steps">
          {part.steps.map((step, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: steps keep their order and may be worded alike
            <li key={i}>
              <Says says={step} />
            </li>
          ))}
        </ol>
        {part.cautions.map((c) => (
          <p key={c}>{c}</p>
        ))}
      </div>
    </details>
  )
}

/** The parts of one trade, a card each, closed until wanted. */
export function PartCards({ parts }: { parts: readonly MadePart[] }) {
  return parts.map((part) => <PartCard key={part.id} part={part} />)
}
