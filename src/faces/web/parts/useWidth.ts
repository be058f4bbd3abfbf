import { useEffect, useRef, useState } from 'react'

/** mm; a figure is drawn no narrower: in less room it is shrunk whole, as its letters would leave none for the drawing */
const least = 72

/** Width to draw a figure at, mm, as the reader's text size makes them: 16 px of text is 4.23 mm. 0 while it is not in sight. */
export function useWidth(): [React.RefObject<HTMLDivElement | null>, number] {
  const ref = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const box = ref.current
    if (!box) return
    const measure = () => {
      const letter = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16
      const room = Math.round((box.clientWidth / letter) * (16 / 96) * 25.4)
      setWidth(room > 0 ? Math.max(least, room) : 0)
    }
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    measure()
    return () => watch.disconnect()
  }, [])
  return [ref, width]
}
