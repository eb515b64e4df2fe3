import { figureIds } from '../drawings/shared/figure-contract.ts'
import { escaped } from '../drawings/shared/xml.ts'
import { oneLine, quote } from '../link/troubles.ts'
import { readSceneStep, type SceneAttributes } from '../words/figures/scene-step.ts'
import { type Theme, themeOf } from './embed-theme.ts'

/** The figures that may be put into a page of somebody else’s, each with the carriage’s slider: the hands’ have none. */
export const embeddedFigures = figureIds.filter((id) => !id.startsWith('hand-'))

/** What the query of an embedded figure’s address says: the state is in its fragment. */
export interface EmbedQuery {
  /** Null where the colours follow the page round it. */
  readonly theme: Theme | null
  /** How the machine in three dimensions is shown, and of whom the sentence speaks. */
  readonly scene: SceneAttributes
}

const sceneKeys = ['view', 'layers', 'subject', 'also', 'hand'] as const

/** The most characters of a sentence on what an address asks for: those that name all there is are long. */
const mostWords = 300

/** Whether a figure has an address for other people’s pages. */
export const isEmbedded = (figure: string): boolean => embeddedFigures.some((id) => id === figure)

/** The query for what was chosen, with its question mark; empty where nothing was. */
export const writeEmbedQuery = ({ theme, scene }: EmbedQuery): string => {
  const query = new URLSearchParams(theme === null ? {} : { theme })
  for (const key of sceneKeys) if (scene[key]) query.set(key, scene[key])
  const text = query.toString()
  return text === '' ? '' : `?${text}`
}

/** Reads a query, and says in sentences what of it can’t be read; that is left out. */
export const readEmbedQuery = (text: string): EmbedQuery & { readonly troubles: readonly string[] } => {
  const query = new URLSearchParams(text)
  const troubles: string[] = []
  const theme = themeOf(text)
  const asked = query.get('theme')
  if (asked !== null && theme === null)
    troubles.push(
      `The colours ${quote(asked)} are not known; there are light and dark. They follow this page.`,
    )
  const scene: { -readonly [Key in keyof SceneAttributes]: SceneAttributes[Key] } = {}
  for (const key of sceneKeys) {
    const value = query.get(key)
    if (value === null) continue
    try {
      readSceneStep({ [key]: value })
      scene[key] = value
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      troubles.push(`In this address, ${oneLine(error.message, mostWords)}; it is left out.`)
    }
  }
  return { theme, scene, troubles }
}

/** How wide the pictures of a frame are that its height is made for, and what the slider and the sentence take, in CSS pixels. */
const roomOf = { wide: 800, narrow: 320, words: 160 } as const

/** Height in CSS pixels of a frame in which both shapes of a figure, given by width over height, have room for their words. */
export const frameHeight = (ratios: Readonly<Record<'wide' | 'narrow', number>>): number => {
  const picture = Math.max(roomOf.wide / ratios.wide, roomOf.narrow / ratios.narrow)
  return Math.ceil((picture + roomOf.words) / 20) * 20
}

/** The HTML by which somebody puts a figure into a page. */
export const frameCode = (address: string, title: string, height: number): string =>
  `<iframe src="${escaped(address)}" title="${escaped(title)}" width="100%" height="${height}" style="border: 0" loading="lazy"></iframe>`
