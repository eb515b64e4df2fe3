// node tests/browser/serve.mjs PORT BASE: serves the built site to the tests as good hosts do. What has its hash in its
// name a browser keeps; for the rest it asks again each time.

import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { siteFile } from './site-file.mjs'

const [port, base = '/'] = process.argv.slice(2)

/** @type {Map<string, { text: Buffer, tag: string }>} */
const texts = new Map()

/** @param {string} path */
function textOf(path) {
  const known = texts.get(path)
  if (known) return known
  const text = readFileSync(path)
  const made = { text, tag: `"${createHash('sha256').update(text).digest('hex').slice(0, 16)}"` }
  texts.set(path, made)
  return made
}

createServer((request, response) => {
  const { name, path, type, status } = siteFile(base, request.url ?? '/')
  const { text, tag } = textOf(path)
  const isNamedByHash = name.startsWith('_astro/')
  response.setHeader('Content-Type', type)
  response.setHeader('Cache-Control', isNamedByHash ? 'max-age=31536000, immutable' : 'no-cache')
  response.setHeader('ETag', tag)
  if (status === 200 && request.headers['if-none-match'] === tag) response.writeHead(304).end()
  else response.writeHead(status).end(text)
}).listen(Number(port), '127.0.0.1')
