import { createHash } from 'node:crypto'
import { bundleScript } from './bundle-script.ts'

/** A script that is in a page itself, and by what the page's policy knows it. */
export interface InlineScript {
  readonly code: string
  readonly hash: `sha256-${string}`
}

const bundled = new Map<string, Promise<InlineScript>>()

const bundle = async (input: string): Promise<InlineScript> => {
  const code = (await bundleScript(input)).code.trim()
  if (/<\/script/i.test(code)) throw new Error(`${input} would end the script that it is in`)
  return { code, hash: `sha256-${createHash('sha256').update(code).digest('base64')}` }
}

/** A module of the browser's as a script to put into a page, bundled once. Throws where it would end its own script. */
const inlineScript = (input: string): Promise<InlineScript> => {
  const script = bundled.get(input) ?? bundle(input)
  bundled.set(input, script)
  return script
}

/** Decodes the fonts that come with a page's styles; its place is at the page's start. */
export const decodeFonts = (): Promise<InlineScript> => inlineScript('src/browser/decode-fonts.ts')

/** Fetches a page's scripts once it is drawn; its place is at the page's end. */
export const loadDeferredScripts = (): Promise<InlineScript> =>
  inlineScript('src/browser/load-deferred-scripts.ts')

/** Writes what is wrong in a case before it is drawn. */
export const caseBeforeFirstPaint = (): Promise<InlineScript> =>
  inlineScript('src/features/case/before-first-paint.ts')

/** Shows the machine first where the home page's address names a state of it. */
export const homeBeforeFirstPaint = (): Promise<InlineScript> =>
  inlineScript('src/features/home/before-first-paint.ts')

/** Folds what one can start from where it would be in the way. */
export const findBeforeFirstPaint = (): Promise<InlineScript> =>
  inlineScript('src/features/find/before-first-paint.ts')

/** Gives an embedded figure the colours that its address chooses. */
export const embedBeforeFirstPaint = (): Promise<InlineScript> =>
  inlineScript('src/features/embed/before-first-paint.ts')
