import { existsSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { BadInput, exit, print } from './outcome.ts'
import { serveFolder } from './serve.ts'

export interface ServeOptions {
  port: string
  show?: string
}

/** `wakewright serve`: the app on the loopback address until it is interrupted. */
export async function serveCommand(options: ServeOptions): Promise<number> {
  const port = Number(options.port)
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new BadInput([`serve: port "${options.port}" is not a whole number from 0 to 65535`])
  const folder = resolve(dirname(fileURLToPath(import.meta.url)), '../web')
  if (!existsSync(resolve(folder, 'index.html')))
    throw new BadInput(['serve: the app is not built yet; run "npm start" once, which builds and serves it'])
  if (options.show !== undefined)
    await (await import('./lookCommand.ts')).look(options.show, { units: 'metric' })
  let served: Awaited<ReturnType<typeof serveFolder>>
  try {
    served = await serveFolder(folder, port)
  } catch (error) {
    const busy = (error as NodeJS.ErrnoException).code === 'EADDRINUSE'
    if (!busy) throw error
    throw new BadInput([`serve: port ${port} is in use; leave --port out to take a free one`])
  }
  print(`\nThe app is at ${served.address}  (Ctrl-C ends it; nothing leaves this machine)`)
  await new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done())
  })
  served.server.closeAllConnections()
  served.server.close()
  return exit.fine
}
