import { useCallback } from 'react'
import { craftPicture } from '../../../../whole/picture/craftPicture.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'

/** The craft to scale, from the side, from above and from astern, floating at rest. */
export function Picture({ craft }: { craft: Craft }) {
  const units = useApp((s) => s.units)
  const draw = useCallback((width: number) => craftPicture(craft, lookOf(units, width)), [craft, units])
  return (
    <Figure
      draw={draw}
      caption="To scale, from the hull the file describes: its mesh, its stations or its measures."
      name={craft.name}
    />
  )
}
