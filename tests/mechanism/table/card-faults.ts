import type { Asked, Rule } from './rule.ts'

const card = { stage: 'card', part: 'card' } as const
const none = (): boolean => false
const asCard = ({ own }: Asked): boolean => own

/** The rows of the fault table about the card and its feed. */
export const cardFaults: readonly Rule[] = [
  {
    id: 'card.torn.2.7',
    shows: 'selects every 24th needle in that card row only',
    comes: ({ own, cardRow, column }) => own || (cardRow === 2 && column === 7),
    ...card,
  },
  { id: 'card.torn.99.7', shows: 'does nothing in a row the card has not', comes: asCard, ...card },
  {
    id: 'card.blocked.1.5',
    shows: 'leaves out every 24th needle in that card row only',
    comes: ({ own, cardRow, column }) => own && !(cardRow === 1 && column === 5),
    ...card,
  },
  { id: 'card.side=1.05', shows: 'stops every column at once', comes: none, ...card },
  { id: 'card.side=-1.2', shows: 'stops every column at once, whichever the side', comes: none, ...card },
  { id: 'card.side=0.95', shows: 'does nothing while the pins still fit', comes: asCard, ...card },
  { id: 'card.side=1', shows: 'does nothing while the pins only just fit', comes: asCard, ...card },
  {
    id: 'card.skew=0.12',
    shows: 'stops the outer columns, those more than 1 mm out of place',
    comes: ({ own, column }) => own && Math.abs(0.12 * (column - 12.5)) <= 1,
    ...card,
  },
  {
    id: 'card.skew=-0.3',
    shows: 'leaves only the middle columns',
    comes: ({ own, column }) => own && Math.abs(0.3 * (column - 12.5)) <= 1,
    ...card,
  },
  { id: 'card.skew=0.08', shows: 'does nothing while the outermost pins still fit', comes: asCard, ...card },
  {
    id: 'card.reversed',
    shows: 'mirrors the pattern: column c reads hole 25 - c',
    comes: ({ hole, due, column }) => hole(due, 25 - column),
    ...card,
  },
  {
    id: 'card.locked',
    shows: 'repeats the first row',
    comes: ({ hole, column }) => hole(1, column),
    ...card,
  },
  {
    id: 'pawl.right',
    shows: 'reads each row twice: 1 1 2 2 3 3',
    comes: ({ hole, pass, column }) => hole([1, 1, 2, 2, 3, 3, 4, 4, 5][pass - 1]!, column),
    stage: 'card',
    part: 'pawl.right',
  },
  {
    id: 'pawl.left',
    shows: 'reads each row twice but the first: 1 2 2 3 3 4',
    comes: ({ hole, pass, column }) => hole([1, 2, 2, 3, 3, 4, 4, 5, 5][pass - 1]!, column),
    stage: 'card',
    part: 'pawl.left',
  },
  {
    id: 'pawl.double',
    shows: 'leaves out every other row: 1 3 5',
    comes: ({ hole, pass, column }) => hole([1, 3, 5, 7, 9, 11, 13, 15, 17][pass - 1]!, column),
    stage: 'card',
    part: 'pawl',
  },
  {
    id: 'pawl.skips.3',
    shows: 'reads the row of pass 2 again in pass 3 and is one row late from there',
    comes: ({ hole, pass, column }) => hole([1, 2, 2, 3, 4, 5, 6, 7, 8][pass - 1]!, column),
    stage: 'card',
    part: 'pawl.left',
  },
  {
    id: 'pawl.jumps.4',
    shows: 'leaves out the row of pass 4 and is one row early from there',
    comes: ({ hole, pass, column }) => hole([1, 2, 3, 5, 6, 7, 8, 9, 10][pass - 1]!, column),
    stage: 'card',
    part: 'pawl.right',
  },
  {
    id: 'turn.twice',
    shows: 'reads each row twice on purpose: 1 1 2 2 3 3',
    comes: ({ hole, pass, column }) => hole([1, 1, 2, 2, 3, 3, 4, 4, 5][pass - 1]!, column),
    stage: 'card',
    part: 'lever',
  },
  {
    id: 'turn.short.3',
    shows: 'reads the row of pass 2 again in pass 3 and is one row late from there',
    comes: ({ hole, pass, column }) => hole([1, 2, 2, 3, 4, 5, 6, 7, 8][pass - 1]!, column),
    stage: 'card',
    part: 'turn',
  },
]
