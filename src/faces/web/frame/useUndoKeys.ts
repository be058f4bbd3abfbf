import { useEffect } from 'react'
import { app } from '../state/app.ts'

/** Ctrl or Cmd with Z, Shift+Z or Y, and S. In a field being typed in, undo is the field's own. */
export function useUndoKeys(): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const key = event.key.toLowerCase()
      if (key === 's') {
        event.preventDefault()
        void app.saveToFile()
        return
      }
      const typing = event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLInputElement
      if (typing || (key !== 'z' && key !== 'y')) return
      event.preventDefault()
      if (key === 'y' || event.shiftKey) app.redo()
      else app.undo()
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [])
}
