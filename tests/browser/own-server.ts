import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { siteFile } from './site-file.mjs'

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
    const { name, path, type, status } = siteFile(base, request.url ?? '/')
    response.writeHead(status, { 'Content-Type': type })
    response.end(changed(name, readFileSync(path)))
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
