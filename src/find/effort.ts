import { type CheckId, checks } from './checks.ts'
import { dimensions } from '../mechanism/dimensions.ts'

const minutesOf = (id: CheckId): number => checks.find((check) => check.id === id)!.minutes

/** A pass by what it takes to make: with the card in question, with another card or without one, at a speed in mm/s. */
export interface Made {
  readonly card: readonly number[] | null
  readonly isOwn: boolean
  readonly speed: number
}

/** How long a pass takes to make and to look at, in minutes, by the table of checks. */
export const passMinutes = ({ card, isOwn, speed }: Made): number => {
  if (card === null) return minutesOf('no-card')
  if (!isOwn) return minutesOf('holes-right')
  return minutesOf(speed === dimensions.speed ? 'next-row' : 'row-fast')
}

/** How long passes take together, in minutes. */
export const passesMinutes = (passes: readonly Made[]): number =>
  passes.reduce((sum, pass) => sum + passMinutes(pass), 0)
