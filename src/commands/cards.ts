import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type CardFile, readCardFile } from '../link/card-text.ts'
import { type CardLibrary, mainCard } from '../link/state.ts'
import type { Card } from '../mechanism/card.ts'

/** The folder of the site's own cards. */
export const cardsFolder = fileURLToPath(new URL('../../content/cards/', import.meta.url))

/** Every card file of a folder by its id, which is its name without `.txt`. Throws where one can't be read. */
export const cardFiles = (folder: string): Map<string, CardFile> => {
  const files = new Map<string, CardFile>()
  for (const name of readdirSync(folder).sort()) {
    if (!name.endsWith('.txt')) continue
    try {
      files.set(basename(name, '.txt'), readCardFile(readFileSync(join(folder, name), 'utf8')))
    } catch (error) {
      throw new Error(`${name}, ${error instanceof Error ? error.message : String(error)}`, { cause: error })
    }
  }
  return files
}

/** The cards of a folder as links name them. */
export const cardLibrary = (folder: string): CardLibrary => {
  const cards = new Map<string, Card>()
  for (const [id, { rows }] of cardFiles(folder)) cards.set(id, rows)
  if (!cards.has(mainCard)) throw new Error(`The main card, ${mainCard}.txt, is missing from ${folder}`)
  return { main: mainCard, cards }
}
