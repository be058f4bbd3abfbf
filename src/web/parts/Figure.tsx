import { useEffect, useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Sheet } from '../../drawing/sheet.ts'
import { svgOf } from '../../drawing/svg.ts'
import { saveFile } from '../state/files.ts'

interface Props {
  /** draws the sheet for the room there is, mm; letters stay as large as the page's text */
  draw: (width: number) => Sheet
  /** what to look at in it, one sentence */
  caption?: string | undefined
  /** changes when the drawing does; without it the sheet is drawn again only when `draw` is another function */
  name?: string
}

/** CSS fixes the inch at 96 px; a drawing's letters are made for 16 px text */
const pixelsPerMm = 96 / 25.4

/** A drawing or curve on a white sheet, drawn at the width there is; a button saves it as SVG. */
export function Figure({ draw, caption, name = 'figure' }: Props) {
  const box = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const element = box.current!
    const watch = new ResizeObserver(() => {
      const text = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 16
      setWidth(Math.round(element.clientWidth / pixelsPerMm / text))
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  const sheet = useMemo(() => (width > 0 ? draw(width) : undefined), [draw, width])
  const svg = useMemo(() => (sheet ? svgOf(sheet) : ''), [sheet])
  return (
    <figure className="figure">
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: made by our own writer, which escapes every letter */}
      <div className="sheet" ref={box} dangerouslySetInnerHTML={{ __html: svg }} />
      <figcaption>
        {caption && <span>{caption}</span>}
        <Button className="plain" onPress={() => void saveFile(`${name}.svg`, svg)}>
          Save picture
        </Button>
      </figcaption>
    </figure>
  )
}
