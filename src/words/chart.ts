import type { ChartRow } from '../find/chart.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Outcome } from '../mechanism/gate.ts'
import { sightTitles } from './looks.ts'

const came: Readonly<Record<Outcome, string>> = {
  plain: 'missed',
  selected: 'selected unasked',
  unmoved: 'not moved',
}

/** Sights in as few words as a wall needs. */
const short: Partial<Record<ChartRow['sight'], string>> = {
  eighth: `Every ${dimensions.strips}th needle`,
  twentyFourth: `Every ${dimensions.columns}th needle`,
  rows: 'Rows repeated, missing or mirrored',
}

/** What one sees, as the heading of a row of the fault chart. */
export const chartTitle = (row: Pick<ChartRow, 'sight' | 'came'>): string => {
  const title = short[row.sight] ?? sightTitles[row.sight]
  if (row.came === null) return title
  if (row.sight === 'everything')
    return row.came === 'selected'
      ? 'Everything selected, or far too much'
      : 'Nothing selected, or far too little'
  return `${title} ${came[row.came]}`
}

/** A fault's title without what explains it: Strip seized. */
export const shortTitle = (title: string): string => title.split(':')[0] ?? title
