import { useEffect, useRef, useState } from 'react'

/** Width of an element in millimetres as the reader's text size makes them: 16 px of text is 4.23 mm. */
export function useWidth(): [React.RefObject<HTMLDivElement | null>, number] {
  const ref = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    const box = ref.current
    if (!box) return
    const measure = () => {
      const letter = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16
      setWidth(Math.round((box.clientWidth / letter) * (16 / 96) * 25.4))
    }
    const watch = new ResizeObserver(measure)
    watch.observe(box)
    measure()
    return () => watch.disconnect()
  }, [])
  return [ref, width]
}
