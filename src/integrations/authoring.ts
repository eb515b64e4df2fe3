import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { basename, extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { cardLibrary, cardsFolder } from '../commands/cards.ts'
import { read } from '../link/read.ts'
import { facts } from '../words/facts.ts'
import { type Known, mistakesIn } from '../site/authoring.ts'
import { passagesOf } from '../site/chapter-outline.ts'
import { figureIds } from '../drawings/shared/figure-contract.ts'

const content = fileURLToPath(new URL('../../content/', import.meta.url))

/** The ids in a folder of the content: its files' names. */
const idsIn = (folder: string): Set<string> =>
  new Set(
    existsSync(join(content, folder))
      ? readdirSync(join(content, folder)).map((name) => basename(name, extname(name)))
      : [],
  )

/** The names of the lines that say what is true of every machine, and what of ours alone. */
const truthIds = (): Set<string> => {
  const text = readFileSync(join(content, 'guide/true-of-every-machine.mdx'), 'utf8')
  return new Set(passagesOf(text, 'Truth').map(({ attributes }) => attributes.get('id') ?? ''))
}

const known = (): Known => {
  const library = cardLibrary(cardsFolder)
  return {
    terms: idsIn('glossary'),
    cautions: idsIn('cautions'),
    sources: idsIn('sources'),
    truths: truthIds(),
    figures: new Set(figureIds),
    facts: new Set(Object.keys(facts)),
    stateTrouble: (text) => read(text, library).troubles[0]?.sentence ?? null,
  }
}

/** What the guides may use beside a chapter's components. */
const guideComponents = ['At', 'Chapters', 'Link', 'Plan', 'Truth', 'Turns']

/** The mistakes in a folder of the content, each with its file and line. */
const mistakesOf = (folder: string, all: Known, also: readonly string[] = []): string[] =>
  [...idsIn(folder)].flatMap((id) => {
    const file = `${folder}/${id}.mdx`
    return mistakesIn(readFileSync(join(content, file), 'utf8'), all, also).map(
      ({ line, message }) => `content/${file}:${line}: ${message}`,
    )
  })

/** Stops the build, with the file and the line, where a chapter or the guide refers to what is not there. */
export const authoringCheck = (): AstroIntegration => ({
  name: 'authoring-check',
  hooks: {
    'astro:config:done': () => {
      const all = known()
      const mistakes = [...mistakesOf('chapters', all), ...mistakesOf('guide', all, guideComponents)]
      if (mistakes.length > 0) throw new Error(`The texts have mistakes:\n${mistakes.join('\n')}`)
    },
  },
})
