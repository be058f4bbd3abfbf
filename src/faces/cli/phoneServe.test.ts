import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { request } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { networkAddresses, type PhoneServed, serveToPhone } from './phoneServe.ts'

const base = mkdtempSync(join(tmpdir(), 'wakewright-'))
const root = join(base, 'site')
mkdirSync(root)
writeFileSync(join(root, 'index.html'), '<p>hello')
writeFileSync(join(base, 'other.txt'), 'no')
const craft = join(base, 'a craft.yaml')
writeFileSync(craft, 'wakewright: 1\n')

let open: PhoneServed | undefined
afterEach(() => {
  open?.server.closeAllConnections()
  open?.server.close()
})

interface Answer {
  status: number
  headers: Record<string, string | string[] | undefined>
  text: string
}

/** What the server answers; `cookie` and `host` as a client would send them. */
const ask = (url: string, options: { method?: string; cookie?: string; host?: string } = {}) =>
  new Promise<Answer>((done, fail) => {
    const headers = {
      ...(options.cookie ? { cookie: options.cookie } : {}),
      ...(options.host ? { host: options.host } : {}),
    }
    const r = request(url, { method: options.method ?? 'GET', headers, rejectUnauthorized: false }, (x) => {
      let text = ''
      x.on('data', (d) => (text += d)).on('end', () =>
        done({ status: x.statusCode!, headers: x.headers as Answer['headers'], text }),
      )
    })
    r.on('error', fail).end()
  })

async function opened(options: { craft?: string } = { craft }) {
  open = await serveToPhone(root, { port: 0, addresses: ['127.0.0.1'], ...options })
  const link = open.links[0]!
  return { link, at: new URL('/', link).href }
}
const passOf = (a: Answer) => String(a.headers['set-cookie']).split(';')[0]!

test('the link lets one phone in, once, by a press; looking at it does not use it up', async () => {
  const { link, at } = await opened()
  expect((await ask(link)).text).toContain('Open it on this phone')
  expect((await ask(link)).status).toBe(200)
  const first = await ask(link, { method: 'POST' })
  expect(first.status).toBe(303)
  expect(first.headers.location).toBe('/?handed=a%20craft.yaml#/pond')
  const cookie = passOf(first)
  expect(String(first.headers['set-cookie'])).toMatch(/Secure; HttpOnly; SameSite=Lax/)
  expect((await ask(at, { cookie })).text).toBe('<p>hello')
  // a second phone, with the link but without what the first was given
  const second = await ask(link, { method: 'POST' })
  expect(second.status).toBe(403)
  expect(second.text).toContain('used already')
  // the first one may come by it again
  expect((await ask(link, { cookie })).status).toBe(303)
})

test('nothing is answered to who has not come in, nor for a host that is not this machine', async () => {
  const { link, at } = await opened()
  expect((await ask(at)).status).toBe(403)
  expect((await ask(`${at}handed/a%20craft.yaml`)).status).toBe(403)
  const cookie = passOf(await ask(link, { method: 'POST' }))
  expect((await ask(at, { cookie: `${cookie}x` })).status).toBe(403)
  expect((await ask(at, { cookie, host: 'example.org' })).status).toBe(404)
})

test('only the app and the one craft are handed out, the craft as it stands now', async () => {
  const { link, at } = await opened()
  const cookie = passOf(await ask(link, { method: 'POST' }))
  expect((await ask(`${at}handed/a%20craft.yaml`, { cookie })).text).toBe('wakewright: 1\n')
  writeFileSync(craft, 'wakewright: 1\nname: changed\n')
  expect((await ask(`${at}handed/a%20craft.yaml`, { cookie })).text).toContain('changed')
  for (const other of ['handed/other.txt', '../other.txt', '%2e%2e/other.txt', 'handed/'])
    expect((await ask(`${at}${other}`, { cookie })).status, other).toBe(404)
  expect((await ask(at, { cookie, method: 'POST' })).status).toBe(405)
})

test('without a craft the app alone is handed out', async () => {
  const { link } = await opened({})
  expect((await ask(link, { method: 'POST' })).headers.location).toBe('/#/pond')
})

test('after twenty wrong guesses the right link opens nothing either', async () => {
  const { link, at } = await opened()
  for (let i = 0; i < 20; i++) expect((await ask(`${at}in/guess${i}`, { method: 'POST' })).status).toBe(403)
  expect((await ask(link, { method: 'POST' })).status).toBe(403)
})

test('each start has another link and another certificate', async () => {
  const a = await opened()
  const print = open!.fingerprint
  open!.server.close()
  const b = await opened()
  expect(new URL(a.link).pathname).not.toBe(new URL(b.link).pathname)
  expect(print).toMatch(/^([0-9A-F]{2}:){31}[0-9A-F]{2}$/)
  expect(open!.fingerprint).not.toBe(print)
})

test('addresses are those of networks, not of the machine to itself', () => {
  const one = (address: string, internal: boolean, family: 'IPv4' | 'IPv6' = 'IPv4') =>
    ({ address, internal, family }) as never
  expect(
    networkAddresses({
      lo: [one('127.0.0.1', true)],
      wl: [one('fe80::1', false, 'IPv6'), one('192.168.4.7', false)],
    }),
  ).toEqual(['192.168.4.7'])
})
