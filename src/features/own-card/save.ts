import { type Card, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toColumn } from '../../mechanism/indices.ts'
import { element } from '../../browser/dom.ts'

/** How long a file's address is kept for the browser to save it, in ms. */
const kept = 60_000

/** Pixels of a saved picture's cell. */
const cell = 16

/** The most characters of a title that a file's name keeps. */
const nameCharacters = 40

/** The first characters of a text, none of them parted from its marks. */
const firstCharacters = (text: string, most: number): string => {
  let length = 0
  let kept = ''
  for (const { segment } of new Intl.Segmenter().segment(text)) {
    length += Array.from(segment).length
    if (length > most) break
    kept += segment
  }
  return kept
}

/** A title as the name of a file: in small letters, with all their marks, and a hyphen for what is between words. */
export const fileName = (title: string, ending: string): string => {
  const plain = title
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return `${firstCharacters(plain, nameCharacters) || 'card'}.${ending}`
}

/** Hands a file to the browser to save. */
export const saveFile = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content)
  element('a', { href: address, download: name }).click()
  setTimeout(() => {
    URL.revokeObjectURL(address)
  }, kept)
}

/** A picture of the card, black where a hole is, row 1 at the bottom: opening it gives the card again. */
export const cardPng = (card: Card): Promise<Blob | null> => {
  const canvas = element('canvas', {
    width: String(dimensions.columns * cell),
    height: String(card.length * cell),
  })
  const pen = canvas.getContext('2d')
  if (!pen) return Promise.resolve(null)
  pen.fillStyle = '#fff'
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.fillStyle = '#000'
  card.forEach((row, n) => {
    for (let column = 1; column <= dimensions.columns; column++)
      if (hasHole(row, toColumn(column)))
        pen.fillRect((column - 1) * cell, (card.length - 1 - n) * cell, cell, cell)
  })
  return new Promise((done) => {
    canvas.toBlob(done, 'image/png')
  })
}
