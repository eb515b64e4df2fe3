import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import subsetFont from 'subset-font'

const styles = new URL('../styles/fonts.css', import.meta.url)
const { resolve } = createRequire(import.meta.url)

/** A font of the styles that has only the characters of a range. */
interface Subset {
  readonly file: string
  readonly characters: string
}

/** The characters of a range as styles write it: `U+20-7E, U+A0`. */
export const charactersOf = (range: string): string =>
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

/** The fonts that the styles want as subsets. */
const subsetsIn = (css: string): Subset[] =>
  [...css.matchAll(/@font-subsets\/([^']+)[^}]*unicode-range:\s+([^;]+);/g)].map(
    ([, file = '', range = '']) => ({
      file,
      characters: charactersOf(range),
    }),
  )

/** Makes fonts so small that they come with the styles, and a page is never drawn without them. */
export const fontSubset = (): AstroIntegration => ({
  name: 'font-subset',
  hooks: {
    'astro:config:setup': async ({ config, updateConfig }) => {
      const folder = fileURLToPath(new URL('./font-subsets/', config.cacheDir))
      mkdirSync(folder, { recursive: true })
      for (const { file, characters } of subsetsIn(readFileSync(styles, 'utf8'))) {
        const font = resolve(`@fontsource/${file.replace(/-latin.*/, '')}/files/${file}`)
        const small = await subsetFont(readFileSync(font), characters, {
          targetFormat: 'woff2',
          keepFeatures: ['kern', 'liga', 'tnum'],
          noHinting: true,
        })
        writeFileSync(join(folder, file), small)
      }
      updateConfig({ vite: { resolve: { alias: { '@font-subsets': folder } } } })
    },
  },
})
