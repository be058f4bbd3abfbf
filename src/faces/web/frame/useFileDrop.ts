import { useEffect, useState } from 'react'
import { app } from '../state/app.ts'

/** Lets a craft file be dropped anywhere on the window; true while one hangs over it. */
export function useFileDrop(): boolean {
  const [over, setOver] = useState(false)
  useEffect(() => {
    const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false
    const hang = (event: DragEvent) => {
      if (!hasFile(event)) return
      event.preventDefault()
      setOver(true)
    }
    const leave = (event: DragEvent) => event.relatedTarget === null && setOver(false)
    const drop = async (event: DragEvent) => {
      setOver(false)
      // a page may take files of its own, such as recordings
      if (!hasFile(event) || event.defaultPrevented) return
      event.preventDefault()
      const file = event.dataTransfer?.files[0]
      const fault = file && (await app.openDropped(file))
      if (fault) app.store.set({ fault })
    }
    addEventListener('dragover', hang)
    addEventListener('dragleave', leave)
    addEventListener('drop', drop)
    return () => {
      removeEventListener('dragover', hang)
      removeEventListener('dragleave', leave)
      removeEventListener('drop', drop)
    }
  }, [])
  return over
}
