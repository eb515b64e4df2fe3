import type { Card } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { checkOf } from './checks.ts'
import { isSameCard, type NotedPass, type Query } from './query.ts'

/** How long a pass takes to make and to look at, in minutes, where `own` is the card in question. */
export const passMinutes = ({ card, speed }: Pick<NotedPass, 'card' | 'speed'>, own: Card | null): number => {
  if (card === null) return checkOf('no-card').minutes
  if (!isSameCard(card, own)) return checkOf('holes-right').minutes
  return checkOf(speed === dimensions.speed ? 'next-row' : 'row-fast').minutes
}

/** How long a query's passes take together, in minutes. */
export const passesMinutes = ({ card, passes }: Pick<Query, 'card' | 'passes'>): number =>
  passes.reduce((sum, pass) => sum + passMinutes(pass, card), 0)
