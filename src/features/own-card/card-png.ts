import { type Card, hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { toColumn } from '../../mechanism/indices.ts'
import { element } from '../../browser/dom.ts'

/** Pixels of a saved picture's cell. */
const cell = 16

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
