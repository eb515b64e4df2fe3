import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** A package of which something reaches the reader's browser, as it says of itself. */
export interface Licence {
  readonly name: string
  readonly version: string
  /** The licence's short name. */
  readonly kind: string
  /** The licence in full; empty where the package carries none and names it only. */
  readonly text: string
}

/** What reaches the browser, the packages' own parts included; the rest only builds and tests. */
export const served = [
  'd3',
  'd3-path',
  'd3-selection',
  'd3-shape',
  'gifenc',
  'gsap',
  'idb',
  'mediabunny',
  'minisearch',
  'nanostores',
  'lean-qr',
  '@cantoo/pdf-lib',
  'fflate',
  'tslib',
  'valibot',
  'workbox-core',
  'workbox-precaching',
  'workbox-routing',
  'workbox-strategies',
  '@fontsource/barlow-semi-condensed',
  '@fontsource/source-serif-4',
]

const read = (name: string): Licence => {
  const folder = join(process.cwd(), 'node_modules', name)
  const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    version: string
    license?: string
  }
  if (about.license === undefined) throw new Error(`${name} names no licence`)
  const file = readdirSync(folder).find((each) => /^licen[sc]e/i.test(each))
  return {
    name,
    version: about.version,
    kind: about.license,
    text: file === undefined ? '' : readFileSync(join(folder, file), 'utf8').trim(),
  }
}

/** The licences of all that the site sends, read from the packages while it is built. Throws where one names none. */
export const licences = (): Licence[] => served.map(read)
