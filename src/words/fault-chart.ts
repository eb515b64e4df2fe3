import type { ChartRow } from '../find/chart.ts'
import type { CheckId } from '../find/checks.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { checkWords } from './checks.ts'
import { departureWords } from './departures.ts'
import { symptomTitles } from './symptoms.ts'

/** Sights in as few words as a wall chart has room for, where their titles are longer. */
const briefTitles: Partial<Record<ChartRow['symptom'], string>> = {
  eighth: `Every ${dimensions.strips}th needle`,
  twentyFourth: `Every ${dimensions.columns}th needle`,
  oneRow: 'One card row only:',
  rows: 'Rows repeated, missing or mirrored',
}

/** What a chart names before any part, where a setting does the same. */
export const firstRuledOut: Partial<Record<ChartRow['symptom'], string>> = {
  everything: 'no card, or it is not in the reader',
}

/** Checks in as few words as a wall chart has room for, where their sentences are longer. */
const briefChecks: Partial<Record<CheckId, string>> = {
  settings: 'Look at the settings: pattern, belt, card off its lock, no row read twice.',
  card: 'Look at the card: torn or blocked holes, its face, how it lies.',
  retainer: 'Draw the retainer bar out: its padding should be soft, even and thick.',
  'broken-piece': 'Stop. Find the piece with a lamp and lift it out before anything moves.',
  'swap-needle': 'Draw the retainer bar out, exchange the needle with its neighbour, try again.',
}

/** A check in a sentence, for the wall. */
export const chartCheck = (check: CheckId): string => briefChecks[check] ?? checkWords[check]

/** The heading of a row of the fault chart: what is visible on the bed. */
export const chartTitle = (row: Pick<ChartRow, 'symptom' | 'came'>): string => {
  const title = briefTitles[row.symptom] ?? symptomTitles[row.symptom]
  if (row.came === null) return title
  return `${title} ${departureWords[row.came].brief}`
}

/** A fault's title without its explanation after the colon: Strip seized. */
export const shortTitle = (title: string): string => title.replace(/:.*$/, '')
