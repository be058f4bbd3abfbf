import { useCallback, useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { MadePart } from '../../../../base/answers/madePart.ts'
import { printed } from '../../../../base/answers/sentence.ts'
import { solidPicture } from '../../../../drawing/solidPicture.ts'
import type { SolidJobOutput } from '../../../../jobs/solidJob.ts'
import { printerOf } from '../../../../trades/prints/printerOf.ts'
import { sectionFigure } from '../../../../trades/prints/solids/sectionFigure.ts'
import { Figure } from '../../parts/Figure.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { downloadBytes } from '../../state/openedFiles.ts'
import { callJob } from '../../work/call.ts'
import { PartFaults } from './PartFaults.tsx'

interface Made {
  output?: SolidJobOutput
  part?: number
  says?: string
  fault?: string
}

/** A part to print: made in a worker, shown from outside and cut through, and its files for the printer. */
export function PrintPart({ part, craft }: { part: MadePart; craft: Craft }) {
  const units = useApp((s) => s.units)
  const [made, setMade] = useState<Made>({})
  const cancel = useRef(() => {})
  // the same order by another look at the craft is the same solid
  const order = JSON.stringify([part.solid, part.title, printerOf(craft)])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the order has all of them
  useEffect(() => {
    if (!part.solid) return
    setMade({})
    const { bed, scale, elephantFoot: foot } = printerOf(craft)
    const call = callJob(
      'solid',
      { order: part.solid, title: part.title, printing: { bed, scale, foot }, files: ['stl', '3mf'] },
      (p, says) => setMade({ part: p, says }),
    )
    call.done.then(
      (output) => setMade({ output }),
      (error: Error) => error.name !== 'AbortError' && setMade({ fault: error.message }),
    )
    cancel.current = () => {
      call.cancel()
      setMade({ fault: 'it was called off' })
    }
    return call.cancel
  }, [order])
  const { output } = made
  const seen = useCallback(
    (width: number) =>
      solidPicture(
        (output?.bodies ?? []).map((b) => b.mesh),
        { width, title: part.title, says: printed(part.says, units) },
      ),
    [output, part, units],
  )
  const body = output?.bodies[0]
  const cut = useCallback((width: number) => sectionFigure(body!, { width, system: units }), [body, units])
  if (!part.solid) return <PartFaults part={part} />
  if (made.fault)
    return (
      <p role="alert" className="fault">
        It could not be made: {made.fault}
      </p>
    )
  if (!output)
    return (
      <JobProgress
        says={made.says ?? `Making ${part.title}`}
        part={made.part}
        onCancel={() => cancel.current()}
      />
    )
  return (
    <div className="flatpart">
      <div className="rolled">
        <SheetSvg draw={seen} />
      </div>
      {body && <Figure draw={cut} caption="Cut through its middle." name={`${part.id}-section`} />}
      <p className="row">
        {output.files.map((f) => (
          <Button key={f.name} onPress={() => downloadBytes(f.name, f.bytes)}>
            {f.name}
          </Button>
        ))}
      </p>
    </div>
  )
}
