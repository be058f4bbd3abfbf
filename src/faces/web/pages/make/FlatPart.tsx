import { useCallback, useMemo } from 'react'
import type { MadePart } from '../../../../base/answers/madePart.ts'
import { printed } from '../../../../base/answers/sentence.ts'
import { solidPicture } from '../../../../drawing/solidPicture.ts'
import { partSheet } from '../../../../whole/make/patternFiles.ts'
import { Figure } from '../../parts/Figure.tsx'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { useApp } from '../../state/hooks.ts'
import { PartFaults } from './PartFaults.tsx'

/** A part of sheet: its flat pieces, and beside them what they are rolled into. */
export function FlatPart({ part }: { part: MadePart }) {
  const units = useApp((s) => s.units)
  const sheet = useMemo(() => partSheet(part, units), [part, units])
  const folded = useMemo(() => part.folded?.() ?? [], [part])
  // the drawing is to scale already: the screen fits it in
  const flat = useCallback(() => sheet!, [sheet])
  const rolled = useCallback(
    (width: number) =>
      solidPicture(folded, { width, title: `${part.title}, rolled up`, says: printed(part.says, units) }),
    [folded, part, units],
  )
  if (!sheet) return <PartFaults part={part} />
  return (
    <div className="flatpart">
      {folded.length > 0 && (
        <div className="rolled">
          <SheetSvg draw={rolled} />
        </div>
      )}
      <div className="flatdrawing">
        <Figure
          draw={flat}
          caption="The pieces as they are cut; the pages print them at full size."
          name={part.id}
        />
      </div>
    </div>
  )
}
