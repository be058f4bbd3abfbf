import { useEffect, useRef } from 'react'
import { Button } from 'react-aria-components/Button'

interface Props {
  main: boolean
  onFile: (file: File) => void
}

const accept = 'audio/*,video/*,.wav,.mp3,.m4a,.aac,.ogg,.opus,.flac,.mp4,.mov,.webm,.gpx'

/** Picks a recording, and takes one dropped anywhere on the page. */
export function OpenRecording({ main, onFile }: Props) {
  const input = useRef<HTMLInputElement>(null)
  useEffect(() => {
    const drop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0]
      // craft files stay with the frame
      if (!file || /\.ya?ml$/i.test(file.name)) return
      event.preventDefault()
      onFile(file)
    }
    const page = document.querySelector<HTMLElement>('main') ?? document.body
    page.addEventListener('drop', drop)
    return () => page.removeEventListener('drop', drop)
  }, [onFile])
  return (
    <>
      <Button className={main ? 'main' : ''} onPress={() => input.current?.click()}>
        {main ? 'Open a recording' : 'Open another recording'}
      </Button>
      <input
        ref={input}
        className="hush"
        tabIndex={-1}
        type="file"
        accept={accept}
        aria-label="Recording"
        onChange={(event) => {
          const file = event.target.files?.[0]
          event.target.value = ''
          if (file) onFile(file)
        }}
      />
    </>
  )
}
