import { existsSync } from 'node:fs'
import { basename, dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { BadInput, exit, print } from './outcome.ts'
import { networkAddresses, type PhoneServed, serveToPhone } from './phoneServe.ts'
import { serveFolder } from './serve.ts'

export interface ServeOptions {
  port: string
  show?: string
  /** a craft to hand over, or true for the app alone */
  phone?: string | boolean
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
  const phone = options.phone ? await openToPhone(folder, options.phone) : undefined
  const stays = phone ? 'nothing leaves this machine but to the phone' : 'nothing leaves this machine'
  print(`\nThe app is at ${served.address}  (Ctrl-C ends it; ${stays})`)
  await new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done())
  })
  for (const { server } of phone ? [served, phone] : [served]) {
    server.closeAllConnections()
    server.close()
  }
  return exit.fine
}

/** Opens the app to one phone on the same network, and says plainly what that means. */
async function openToPhone(folder: string, phone: string | boolean): Promise<PhoneServed> {
  const craft = typeof phone === 'string' ? phone : undefined
  // a craft that cannot be read is refused here, not on the phone
  if (craft !== undefined) await (await import('./readCraftFile.ts')).readCraftFile(craft)
  const addresses = networkAddresses()
  if (addresses.length === 0)
    throw new BadInput([
      'serve: this machine is in no network that a phone could share; turn on the hotspot of one of the two',
    ])
  const opened = await serveToPhone(folder, { port: 0, addresses, ...(craft === undefined ? {} : { craft }) })
  const { renderUnicodeCompact } = await import('uqr')
  print(
    [
      '',
      `For one phone in the same network: the app${craft === undefined ? '' : ` and ${basename(craft)}`}, nothing else of this machine.`,
      'Anyone in that network who opens the link first gets in, so use a network that you trust; it works once and ends with Ctrl-C.',
      'Point the phone’s camera at this, or type the address:',
      '',
      renderUnicodeCompact(opened.links[0]!, { border: 2 }),
      '',
      ...opened.links.map((link) => `  ${link}`),
      '',
      'The phone will warn that nobody vouches for the certificate: it was made here a moment ago. Its fingerprint (SHA-256) is',
      `  ${opened.fingerprint}`,
      'Go on only when the phone shows the same.',
    ].join('\n'),
  )
  return opened
}
