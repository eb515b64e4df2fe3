import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { basename, extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { cardLibrary, cardsFolder } from '../commands/cards.ts'
import { read } from '../link/read.ts'
import { facts } from '../words/facts.ts'
import { type Known, mistakesIn } from './authoring.ts'
import { figureIds } from '../drawings/figure.ts'

const content = fileURLToPath(new URL('../../content/', import.meta.url))

/** The ids in a folder of the content: its files' names. */
const idsIn = (folder: string): Set<string> =>
  new Set(
    existsSync(join(content, folder))
      ? readdirSync(join(content, folder)).map((name) => basename(name, extname(name)))
      : [],
  )

const known = (): Known => {
  const library = cardLibrary(cardsFolder)
  return {
    terms: idsIn('glossary'),
    cautions: idsIn('cautions'),
    sources: idsIn('sources'),
    figures: new Set(figureIds),
    facts: new Set(Object.keys(facts)),
    stateTrouble: (text) => read(text, library).troubles[0]?.sentence ?? null,
  }
}

/** Stops the build, with the file and the line, where a chapter refers to what is not there. */
export const authoringCheck = (): AstroIntegration => ({
  name: 'authoring-check',
  hooks: {
    'astro:config:done': () => {
      const folder = join(content, 'chapters')
      const names = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.mdx')) : []
      const all = known()
      const mistakes = names.flatMap((name) =>
        mistakesIn(readFileSync(join(folder, name), 'utf8'), all).map(
          ({ line, message }) => `content/chapters/${name}:${line}: ${message}`,
        ),
      )
      if (mistakes.length > 0) throw new Error(`The chapters have mistakes:\n${mistakes.join('\n')}`)
    },
  },
})
