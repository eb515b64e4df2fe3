import type { Card } from '@/mechanism/card.ts'
import { rowWith } from './trade.ts'

/** Rows without pattern, so that no two columns agree in all of them. */
export const scattered: Card = [0xa53c96, 0x1f07e8, 0xc9a274, 0x5b6d13, 0x80f431, 0x3e92cd, 0x74d80b]

export const allHoles: Card = [0xffffff]
const blank: Card = [0]

/** One hole or two in a row, so that what each does is seen alone. */
const sparse: Card = [rowWith(5), rowWith(1, 24), rowWith(), rowWith(3, 13)]

export const namedCards: readonly (readonly [string, Card])[] = [
  ['a scattered card', scattered],
  ['a card of all holes', allHoles],
  ['a blank card', blank],
  ['a sparse card', sparse],
]
