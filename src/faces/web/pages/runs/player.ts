import { useEffect, useSyncExternalStore } from 'react'

/** Which sound plays: the recording, or one engine's lines alone. */
export type Voice = 'all' | 'A' | 'B'

export interface Playing {
  /** s */
  time: number
  playing: boolean
  voice: Voice
  /** why it cannot be played */
  fault: string
}

/** One audio element for the page; its time is the cursor of every picture. */
export interface Player {
  use(): Playing
  toggle(): void
  stop(): void
  seek(time: number): void
  /** plays another sound from the same moment */
  load(voice: Voice, sound: Blob): void
  /** says why a sound could not be had */
  fail(says: string): void
  /** forgets everything */
  close(): void
}

export function makePlayer(): Player {
  const audio = new Audio()
  let state: Playing = { time: 0, playing: false, voice: 'all', fault: '' }
  let address = ''
  let frame = 0
  const listeners = new Set<() => void>()
  const put = (part: Partial<Playing>) => {
    state = { ...state, ...part }
    for (const listener of listeners) listener()
  }
  const follow = () => {
    put({ time: audio.currentTime })
    frame = audio.paused ? 0 : requestAnimationFrame(follow)
  }
  audio.addEventListener('play', () => {
    put({ playing: true, fault: '' })
    cancelAnimationFrame(frame)
    follow()
  })
  audio.addEventListener('pause', () => put({ playing: false, time: audio.currentTime }))
  audio.addEventListener('seeked', () => put({ time: audio.currentTime }))
  audio.addEventListener('error', () => {
    if (address) put({ playing: false, fault: 'This browser cannot play the recording.' })
  })
  const play = () =>
    audio.play().catch((error: Error) => {
      if (error.name !== 'AbortError') put({ fault: 'This browser cannot play the recording.' })
    })
  const subscribe = (listener: () => void) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }
  return {
    use: () => useSyncExternalStore(subscribe, () => state),
    toggle: () => (audio.paused ? void play() : audio.pause()),
    stop: () => audio.pause(),
    seek(time) {
      put({ time })
      if (address) audio.currentTime = time
    },
    load(voice, sound) {
      const { time, playing } = state
      if (address) URL.revokeObjectURL(address)
      address = URL.createObjectURL(sound)
      audio.src = address
      audio.currentTime = time
      put({ voice, fault: '' })
      if (playing) void play()
    },
    fail: (says) => put({ fault: says }),
    close() {
      audio.pause()
      audio.removeAttribute('src')
      if (address) URL.revokeObjectURL(address)
      address = ''
      put({ time: 0, playing: false, voice: 'all', fault: '' })
    },
  }
}

export const player = makePlayer()

/** Stops the sound when the page is left. */
export const useQuietOnLeave = () => useEffect(() => () => player.stop(), [])
