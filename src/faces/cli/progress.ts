import { Presets, SingleBar } from 'cli-progress'

export interface ProgressLine {
  show(part: number, says: string): void
  end(): void
}

/** A line on stderr that tells how far a long work is; nothing where stderr is not a terminal. */
export function progressLine(): ProgressLine {
  let bar: SingleBar | undefined
  return {
    show(part, says) {
      if (!process.stderr.isTTY) return
      if (!bar) {
        bar = new SingleBar(
          {
            format: '{bar} {percentage} % {says}',
            clearOnComplete: true,
            hideCursor: true,
            stream: process.stderr,
          },
          Presets.shades_classic,
        )
        bar.start(1, 0, { says })
      }
      bar.update(Math.min(1, part), { says })
    },
    end() {
      bar?.stop()
      bar = undefined
    },
  }
}
