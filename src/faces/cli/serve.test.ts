import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { fileFor, serveFolder } from './serve.ts'

const base = mkdtempSync(join(tmpdir(), 'wakewright-'))
const root = join(base, 'site')
mkdirSync(join(root, 'sub'), { recursive: true })
writeFileSync(join(base, 'secret.txt'), 'no')
writeFileSync(join(root, 'index.html'), '<p>hello')
writeFileSync(join(root, 'sub', 'a b.js'), 'x')

let served: Awaited<ReturnType<typeof serveFolder>>
beforeAll(async () => {
  served = await serveFolder(root)
})
afterAll(() => {
  served.server.close()
})

test('fileFor stays inside the folder whatever the path says', () => {
  expect(fileFor(root, '/')).toBe(join(root, 'index.html'))
  expect(fileFor(root, '/sub/a%20b.js?x#y')).toBe(join(root, 'sub', 'a b.js'))
  for (const bad of [
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%00',
    '/%',
    '/sub',
    '/..\\secret.txt',
    '//etc/passwd',
  ])
    expect(fileFor(root, bad), bad).toBeUndefined()
})

test('it answers on the loopback address with a type and refuses other methods', async () => {
  const page = await fetch(served.address)
  expect(page.status).toBe(200)
  expect(page.headers.get('content-type')).toContain('text/html')
  expect(await page.text()).toBe('<p>hello')
  expect((await fetch(served.address, { method: 'POST' })).status).toBe(405)
  expect((await fetch(`${served.address}none`)).status).toBe(404)
})

test('a request that names another host is not answered', async () => {
  const status = await new Promise<number>((done, fail) => {
    const r = request(served.address, { headers: { host: 'example.org' } }, (x) => {
      x.resume()
      done(x.statusCode ?? 0)
    })
    r.on('error', fail)
    r.end()
  })
  expect(status).toBe(404)
})
