import { useRef } from 'react'
import { Button } from 'react-aria-components/Button'
import {
  mergedLogs,
  type PackedRun,
  packOf,
  type Unpacked,
  unpack,
} from '../../../../../whole/log/runPack.ts'
import { several } from '../../../parts/several.ts'
import { app } from '../../../state/app.ts'
import type { Craft } from '../../../state/craftFile.ts'
import { changeLog } from '../../../state/logs.ts'
import { saveFile } from '../../../state/openedFiles.ts'
import { keepRun, keptRun, type RunLine } from '../../../state/runs.ts'
import type { Recording } from '../bench.ts'
import type { Kept } from '../KeptRuns.tsx'
import { nothingTold, type Told } from '../told.ts'

interface Whole {
  recording: Recording
  told: Told
}

interface Props {
  craft: Craft
  craftId: string
  text: string
  kept: Kept
}

/** Hands the log over as a file, or the craft with its log and runs as one ZIP; and takes either back. */
export function TakeAway({ craft, craftId, text, kept }: Props) {
  const input = useRef<HTMLInputElement>(null)
  const fileName = () => app.store.get().work?.fileName ?? 'craft.yaml'
  const base = () => fileName().replace(/\.ya?ml$/i, '')
  const saveLog = () => saveFile(`${base()}.log.yaml`, text)
  const saveAll = async () => {
    const runs = await Promise.all(kept.runs.map(packed))
    const bytes = packOf({
      craft: { name: fileName(), text: app.store.get().work?.text ?? '' },
      log: text,
      runs: runs.filter((r) => r !== undefined),
    })
    const name = await saveFile(`${base()}.zip`, bytes as Uint8Array<ArrayBuffer>)
    if (name) app.say(`Saved as ${name}: the craft, its log and ${several(runs.length, 'run')}.`)
  }
  const bring = async (file: File) => {
    try {
      if (/\.ya?ml$/i.test(file.name)) {
        const other = await file.text()
        await changeLog(craftId, (own) => mergedLogs(own, other))
        return app.say(`${file.name} is joined to the log.`)
      }
      app.say(await takeIn(craftId, unpack(new Uint8Array(await file.arrayBuffer()))))
      kept.load()
    } catch (error) {
      app.say(`${file.name} could not be kept (${(error as Error).message}).`)
    }
  }
  return (
    <>
      <div className="row">
        <Button isDisabled={text === ''} onPress={() => void saveLog()}>
          Save the log
        </Button>
        <Button onPress={() => void saveAll()}>Take all away</Button>
        <Button className="plain" onPress={() => input.current?.click()}>
          Bring back
        </Button>
        <input
          ref={input}
          className="hush"
          tabIndex={-1}
          type="file"
          accept=".zip,.yaml,.yml"
          aria-label="Log or ZIP to bring back"
          onChange={(event) => {
            const file = event.target.files?.[0]
            event.target.value = ''
            if (file) void bring(file)
          }}
        />
      </div>
      <p className="quiet">
        The log of {craft.name} stands in this browser as plain text. A saved log is joined to it, entry by
        entry; the ZIP brings its runs along.
      </p>
    </>
  )
}

async function packed(line: RunLine): Promise<PackedRun | undefined> {
  const whole = await keptRun<Whole>(line.id)
  if (!whole) return undefined
  const { audio, ...recording } = whole.recording
  return {
    id: line.id,
    name: line.name,
    whole: { line, recording, told: whole.told },
    ...(audio ? { sound: { bytes: new Uint8Array(await audio.arrayBuffer()), type: audio.type } } : {}),
  }
}

/** Keeps what a ZIP held; answers what became of it. */
async function takeIn(craftId: string, { log, runs, problems }: Unpacked): Promise<string> {
  if (log !== undefined) await changeLog(craftId, (own) => mergedLogs(own, log))
  let count = 0
  const wrong = [...problems]
  for (const run of runs) {
    const held = run.whole as { line?: RunLine; recording?: Recording; told?: Partial<Told> } | undefined
    if (!held?.line || !held.recording) {
      wrong.push(`${run.name} is no run this page can open`)
      continue
    }
    const { sound } = run
    const audio = sound && new Blob([sound.bytes as Uint8Array<ArrayBuffer>], { type: sound.type })
    const whole: Whole = {
      recording: { ...held.recording, audio },
      told: { ...nothingTold, ...held.told },
    }
    await keepRun(craftId, { ...held.line, sound: audio !== undefined }, whole)
    count++
  }
  const said = [`Brought back: ${log === undefined ? 'no log' : 'the log'} and ${several(count, 'run')}.`]
  return [...said, ...wrong].join(' ')
}
