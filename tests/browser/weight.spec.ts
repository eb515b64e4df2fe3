import { readdirSync, readFileSync, statSync } from 'node:fs'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { expect, test } from '@playwright/test'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

/** What is compressed already. */
const packed = new Set(['.png', '.woff2'])

/** Most that each part of the site may weigh as hosts send it, compressed, in kB. */
const most: Readonly<Record<string, number>> = {
  _astro: 925,
  chapters: 300,
  class: 315,
  faults: 460,
  measure: 75,
  paper: 280,
  embed: 45,
  previews: 660,
  scene: 900,
  search: 40,
  stills: 420,
  'sw.js': 33,
}
const mostOfAnother = 35

/** Most that the whole site may weigh as it lies there, nothing compressed, in kB. */
const mostOfAll = 14_000

/** Kilobytes of a file, or of a folder's files: as they are sent, and as they lie there. */
const weightOf = (path: string): { sent: number; whole: number } => {
  if (statSync(path).isDirectory())
    return readdirSync(path)
      .map((name) => weightOf(join(path, name)))
      .reduce((sum, { sent, whole }) => ({ sent: sum.sent + sent, whole: sum.whole + whole }))
  const bytes = readFileSync(path)
  const sent = packed.has(extname(path)) ? bytes.length : gzipSync(bytes, { level: 9 }).length
  return { sent: sent / 1000, whole: bytes.length / 1000 }
}

test('no part of the site has grown beyond its budget, nor has the whole', () => {
  const parts = readdirSync(dist).map((name) => ({ name, ...weightOf(join(dist, name)) }))
  const { sent, whole } = weightOf(dist)
  console.log(`the whole site: ${(whole / 1000).toFixed(2)} MB, ${(sent / 1000).toFixed(2)} MB as sent`)
  const grown = parts
    .filter((part) => part.sent > (most[part.name] ?? mostOfAnother))
    .map((part) => `${part.name}: ${part.sent.toFixed(0)} kB of ${most[part.name] ?? mostOfAnother}`)
  expect(grown).toEqual([])
  expect(parts.length).toBeGreaterThan(10)
  const heaviest = parts
    .sort((one, other) => other.whole - one.whole)
    .map((part) => `${part.name} ${part.whole.toFixed(0)} kB`)
  expect(whole, heaviest.join(', ')).toBeLessThan(mostOfAll)
})
