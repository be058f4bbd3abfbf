/**
 * The app for a phone on the same network: over https with a certificate of its own, as browsers give a page the microphone only
 * there. One link, good once, lets one phone in; only the app's files and the one craft are handed out.
 */
import { randomBytes, timingSafeEqual, X509Certificate } from 'node:crypto'
import { readFileSync } from 'node:fs'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { createServer, type Server } from 'node:https'
import { type NetworkInterfaceInfo, networkInterfaces } from 'node:os'
import { basename, resolve } from 'node:path'
import { answerFiles, answerText, hostOf, listening } from './serve.ts'

export interface PhoneOptions {
  /** 0 takes a free one */
  port: number
  /** craft file to hand over */
  craft?: string
  /** IPv4 addresses of this machine that a phone could reach */
  addresses: readonly string[]
}

export interface PhoneServed {
  server: Server
  /** one for each address of this machine, each good until the first of them is used */
  links: readonly string[]
  /** of the certificate, SHA-256, as browsers show it */
  fingerprint: string
}

/** wrong links after which the right one is not taken either */
const MOST_WRONG = 20
/** days the certificate is good for: one season of ponds would do, browsers take at most 398 */
const DAYS = 90

/** IPv4 addresses of this machine in the networks it is in. */
export function networkAddresses(
  all: NodeJS.Dict<NetworkInterfaceInfo[]> = networkInterfaces(),
): readonly string[] {
  return Object.values(all).flatMap((list) =>
    (list ?? []).filter((one) => one.family === 'IPv4' && !one.internal).map((one) => one.address),
  )
}

const secret = () => randomBytes(18).toString('base64url')

/** Equal without telling by its time how much of it was right. */
function same(a: string, b: string): boolean {
  const [x, y] = [Buffer.from(a), Buffer.from(b)]
  return x.length === y.length && timingSafeEqual(x, y)
}

/** A fresh certificate for the addresses. */
async function certificateFor(addresses: readonly string[]) {
  const { generate } = await import('selfsigned')
  const until = new Date()
  until.setDate(until.getDate() + DAYS)
  return generate([{ name: 'commonName', value: 'Wakewright on this machine' }], {
    keyType: 'ec',
    algorithm: 'sha256',
    notAfterDate: until,
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...addresses.map((ip) => ({ type: 7 as const, ip })),
          { type: 2 as const, value: 'localhost' },
        ],
      },
    ],
  })
}

/** Serves the app's folder to one phone. */
export async function serveToPhone(folder: string, options: PhoneOptions): Promise<PhoneServed> {
  const root = resolve(folder)
  const made = await certificateFor(options.addresses)
  const door = doorWith(secret(), secret())
  const hosts = [...options.addresses, 'localhost']
  const name = options.craft === undefined ? undefined : basename(options.craft)
  const server = createServer({ key: made.private, cert: made.cert }, (request, response) => {
    const path = (request.url ?? '/').split(/[?#]/)[0]!
    if (!hosts.includes(hostOf(request))) return void answerText(response, 404, 'Nothing here.')
    if (path.startsWith('/in/')) return void door.comeIn(path.slice(4), name, request, response)
    if (!door.isIn(request))
      return void answerText(
        response,
        403,
        'Only the phone that used the link is let in. Start serve --phone again for a new one.',
      )
    if (name !== undefined && path === `/handed/${encodeURIComponent(name)}`)
      return void handOver(options.craft!, response)
    answerFiles(root, hosts, request, response)
  })
  const port = await listening(server, options.port, '0.0.0.0')
  return {
    server,
    links: options.addresses.map((a) => `https://${a}:${port}/in/${door.link}`),
    fingerprint: new X509Certificate(made.cert).fingerprint256,
  }
}

/** The craft as it stands in its file now. */
function handOver(path: string, response: ServerResponse): void {
  let text: Buffer
  try {
    text = readFileSync(path)
  } catch {
    return void answerText(response, 404, 'The craft file is no longer there.')
  }
  response.writeHead(200, { 'content-type': 'text/yaml; charset=utf-8', 'cache-control': 'no-store' })
  response.end(text)
}

/** Who is let in: the first who asks for it by the link, and after that only who carries what was then given. */
function doorWith(link: string, pass: string) {
  let used = false
  let wrong = 0
  const isIn = (request: IncomingMessage): boolean =>
    used && (request.headers.cookie ?? '').split(';').some((part) => same(part.trim(), `wakewright=${pass}`))
  const comeIn = (
    given: string,
    craft: string | undefined,
    request: IncomingMessage,
    response: ServerResponse,
  ): void => {
    const opens = same(given, link) && wrong < MOST_WRONG
    if (!opens) {
      wrong++
      return void answerText(response, 403, 'This link opens nothing.')
    }
    if (isIn(request)) return void go(craft, response)
    if (used)
      return void answerText(
        response,
        403,
        'This link was used already. Start serve --phone again for a new one.',
      )
    // whatever looks ahead at a link must not use it up: it takes a press
    if (request.method !== 'POST') return void greet(response)
    used = true
    response.setHeader(
      'set-cookie',
      `wakewright=${pass}; Secure; HttpOnly; SameSite=Lax; Path=/; Max-Age=${DAYS * 86400}`,
    )
    go(craft, response)
  }
  return { link, isIn, comeIn }
}

function go(craft: string | undefined, response: ServerResponse): void {
  const search = craft === undefined ? '' : `?handed=${encodeURIComponent(craft)}`
  response.writeHead(303, { location: `/${search}#/pond`, 'cache-control': 'no-store' })
  response.end()
}

function greet(response: ServerResponse): void {
  response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' })
  response.end(`<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Wakewright</title>
<style>body{font:1.2rem/1.5 sans-serif;margin:2rem;background:#fbfaf6;color:#1b1a17}button{font:inherit;width:100%;padding:1.2rem;border:0;border-radius:.4rem;background:#b03c05;color:#fff}</style>
<h1>Wakewright</h1><p>The app comes from the computer that showed you this link, and stays on this phone. The link works once.</p>
<form method="post"><button>Open it on this phone</button></form></html>`)
}
