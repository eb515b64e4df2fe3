import { type CardPlace, usualPlace, wayOfPass } from '../mechanism/bed.ts'
import type { Card } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { NeedleMark } from './bed-marks.ts'
import type { SeenPass } from './session.ts'
import { writeSession } from './session-link.ts'
import { mainCard } from './state.ts'
import { nothingOwn } from '../mechanism/own.ts'

/** One look at the bed that a test card asks for: which pass of which card, and how fast, in mm/s. */
interface PassToSee {
  readonly card: Card | null
  /** From 1. */
  readonly pass: number
  readonly speed: number
}

const nobodyLooked = new Array<NeedleMark>(dimensions.needles).fill('n')

/** A test card's passes in their order, with no needle noted yet. */
export const testCardPasses = (views: readonly PassToSee[]): SeenPass[] =>
  views.map(({ card, pass, speed }): SeenPass => ({
    card: card ? { kind: 'own', rows: card } : { kind: 'none' },
    row: card ? ((pass - 1) % card.length) + 1 : null,
    way: wayOfPass(pass),
    speed,
    pass,
    marks: nobodyLooked,
  }))

/** The text of a link to a search for a fault that waits for these passes, on a bed with the card at a place. */
export const testCardSession = (passes: readonly SeenPass[], { columnOne }: CardPlace = usualPlace): string =>
  writeSession(
    {
      practice: null,
      deal: null,
      level: 1,
      isRough: false,
      columnOne,
      own: nothingOwn,
      passes,
      checked: [],
      intake: [],
      finding: null,
    },
    { main: mainCard, cards: new Map() },
  )
