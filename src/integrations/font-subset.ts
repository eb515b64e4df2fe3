import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import subsetFont from 'subset-font'

const styles = new URL('../styles/fonts.css', import.meta.url)
const { resolve } = createRequire(import.meta.url)

/** A font of the styles that has only the letters of a range. */
interface SmallFont {
  readonly file: string
  readonly letters: string
}

/** The letters of a range as styles write it: `U+20-7E, U+A0`. */
export const lettersOf = (range: string): string =>
  range
    .split(',')
    .flatMap((part) => {
      const [first = NaN, last = first] = part
        .trim()
        .slice(2)
        .split('-')
        .map((code) => parseInt(code, 16))
      return Array.from({ length: last - first + 1 }, (_, n) => String.fromCodePoint(first + n))
    })
    .join('')

/** The fonts that the styles want small. */
const smallFonts = (css: string): SmallFont[] =>
  [...css.matchAll(/@letters\/([^']+)[^}]*unicode-range:\s+([^;]+);/g)].map(([, file = '', range = '']) => ({
    file,
    letters: lettersOf(range),
  }))

/** Makes fonts so small that they come with the styles, and a page is never drawn without them. */
export const letters = (): AstroIntegration => ({
  name: 'letters',
  hooks: {
    'astro:config:setup': async ({ config, updateConfig }) => {
      const folder = fileURLToPath(new URL('./letters/', config.cacheDir))
      mkdirSync(folder, { recursive: true })
      for (const { file, letters } of smallFonts(readFileSync(styles, 'utf8'))) {
        const font = resolve(`@fontsource/${file.replace(/-latin.*/, '')}/files/${file}`)
        const small = await subsetFont(readFileSync(font), letters, {
          targetFormat: 'woff2',
          keepFeatures: ['kern', 'liga', 'tnum'],
          noHinting: true,
        })
        writeFileSync(join(folder, file), small)
      }
      updateConfig({ vite: { resolve: { alias: { '@letters': folder } } } })
    },
  },
})
