import { readdirSync, readFileSync, statSync } from 'node:fs'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { expect, test } from '@playwright/test'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

/** What is compressed already. */
const packed = new Set(['.png', '.woff2'])

/** Most that each part of the site may weigh as hosts send it, compressed, in kB. Together well under 10 MB. */
const most: Readonly<Record<string, number>> = {
  _astro: 700,
  chapters: 320,
  class: 320,
  faults: 480,
  paper: 200,
  previews: 850,
  stills: 640,
  'sw.js': 30,
}
const mostOfAnother = 35

/** Bytes of a file, or of a folder's files, as they are sent. */
const weightOf = (path: string): number => {
  if (statSync(path).isDirectory())
    return readdirSync(path).reduce((sum, name) => sum + weightOf(join(path, name)), 0)
  const bytes = readFileSync(path)
  return packed.has(extname(path)) ? bytes.length : gzipSync(bytes, { level: 9 }).length
}

test('no part of the site has grown beyond its budget', () => {
  const weights = readdirSync(dist).map((name) => ({ name, kilobytes: weightOf(join(dist, name)) / 1000 }))
  const whole = weights.reduce((sum, { kilobytes }) => sum + kilobytes, 0)
  console.log(`the whole site as sent: ${(whole / 1000).toFixed(2)} MB`)
  const grown = weights
    .filter(({ name, kilobytes }) => kilobytes > (most[name] ?? mostOfAnother))
    .map(({ name, kilobytes }) => `${name}: ${kilobytes.toFixed(0)} kB of ${most[name] ?? mostOfAnother}`)
  expect(grown).toEqual([])
  expect(weights.length).toBeGreaterThan(10)
  expect(whole).toBeLessThan(10_000)
})
