import { needleName, stripOfColumn } from '../mechanism/bed.ts'
import type { Outcome } from '../mechanism/gate.ts'
import type { Departure } from '../mechanism/reason.ts'
import { partName } from './parts.ts'

interface DepartureWords {
  /** In a list: R3 missed. */
  readonly brief: string
  /** The same at length. */
  readonly full: string
  /** After the needle's name: R3 is missed. */
  readonly clause: string
}

/** Words for a needle that came out otherwise than asked, by what came of it. */
export const departureWords: Readonly<Record<Outcome, DepartureWords>> = {
  plain: { brief: 'missed', full: 'missed', clause: 'is missed' },
  selected: {
    brief: 'selected unasked',
    full: 'selected without being asked',
    clause: 'is selected without being asked',
  },
  unmoved: { brief: 'not moved', full: 'not moved', clause: 'does not move' },
}

/** Why one needle came out otherwise than asked, as the rest of a sentence after “because” or a colon: strip 3 is still shifted. */
export const causeOf = (departure: Departure): string => {
  const { part, asked, needle, column } = departure
  const missed = asked === 'selected'
  const name = partName(part)
  switch (departure.stage) {
    case 'card':
      if (part === 'belt') return 'the belt is not engaged, so the card does not move on'
      if (part === 'lever') return 'the lever is set so that each row is read twice'
      if (part !== 'card') return `the card shows another row than the one due, because of ${name}`
      return missed
        ? 'the card stops a pin that should go through'
        : 'the card lets a pin through that it should stop'
    case 'pin':
      if (missed) return `${name} stays low although its column has a hole`
      return part === `pin.${column}`
        ? `${name} stands high without a hole`
        : `${name} stays pushed over and keeps strip ${stripOfColumn(column)} shifted`
    case 'sweep':
      if (part === 'belt')
        return missed ? 'the sweep is not at this pin in time' : 'the sweep is at another pin'
      return 'the sweep is worn and slides over the pin with too little bite'
    case 'rocker':
      return missed ? `${name} does not pass the push on` : `${name} pushes without being asked`
    case 'strip':
      return missed ? `${name} does not shift far enough` : `${name} is still shifted`
    case 'hold':
      if (part === 'carriage') return 'the carriage is not set to pattern'
      if (part === 'belt') return 'the sweep is early, and its strip lets the butt go before the first gate'
      if (departure.came === 'unmoved') return `${name} has no butt for the cams to move`
      if (part.startsWith('catch')) return `${name} is broken`
      return part.startsWith('needle')
        ? `the butt of ${needleName(needle)} is out of its catch’s reach`
        : `${name} does not dip the butt far enough`
    case 'gate':
      if (part === 'gate.1')
        return missed
          ? 'the first gate hangs so low that it stops a held butt too'
          : 'the first gate stands so high that a free butt slips under'
      return part === 'gate.2'
        ? 'the butt is too low even for the second gate'
        : `${name} lets the butt spring up too slowly`
  }
}
