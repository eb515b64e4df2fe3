import type { TestCard } from '../find/test-card.ts'
import type { Mark } from './bed-marks.ts'
import { type SeenPass, writeSession } from './session.ts'
import { mainCard } from './state.ts'
import { wayOfPass } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'

const nobodyLooked = new Array<Mark>(dimensions.needles).fill('n')

/** A test card's passes to look at, in their order, with no needle noted yet. */
export const passesWith = ({ dictionary }: Pick<TestCard, 'dictionary'>): SeenPass[] =>
  dictionary.views.map(({ card, pass, speed }): SeenPass => ({
    card: card ? { kind: 'own', rows: card } : { kind: 'none' },
    row: card ? ((pass - 1) % card.length) + 1 : null,
    way: wayOfPass(pass),
    speed,
    marks: nobodyLooked,
  }))

/** The link's text of a search that waits for these passes. */
export const sessionWith = (passes: readonly SeenPass[]): string =>
  writeSession(
    { practice: null, isRough: false, passes, checked: [], finding: null },
    { main: mainCard, cards: new Map() },
  )
