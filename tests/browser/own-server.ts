import { existsSync, readFileSync, statSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join } from 'node:path'
import { dist } from '@/setup/paths.mjs'

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
}

/** A server that a test may end, or have serve something else: what the worker does shows only without it. */
export interface OwnServer {
  readonly address: string
  /** From now on files are sent as this changes them. */
  readonly change: (change: (name: string, text: Buffer) => Buffer | string) => void
  readonly end: () => Promise<void>
}

/** Serves the built site under a base path, from a port of its own. */
export const serveSite = async (base: string): Promise<OwnServer> => {
  let changed = (_name: string, text: Buffer): Buffer | string => text
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '', 'http://x').pathname).slice(base.length)
    const name = path === '' || path.endsWith('/') ? `${path}index.html` : path
    const file = join(dist, name)
    if (!existsSync(file) || !statSync(file).isFile()) {
      response.writeHead(404, { 'Content-Type': 'text/html; charset=utf-8' })
      response.end(changed('404.html', readFileSync(join(dist, '404.html'))))
      return
    }
    response.writeHead(200, { 'Content-Type': types[extname(name)] ?? 'text/plain' })
    response.end(changed(name, readFileSync(file)))
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  return {
    address: `http://127.0.0.1:${port}${base}`,
    change: (change) => {
      changed = change
    },
    end: async () => {
      server.closeAllConnections()
      await new Promise((done) => server.close(done))
    },
  }
}
