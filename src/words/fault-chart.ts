import type { ChartRow } from '../find/chart.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { departureWords } from './departures.ts'
import { symptomTitles } from './symptoms.ts'

/** Sights in as few words as a wall chart has room for, where their titles are longer. */
const briefTitles: Partial<Record<ChartRow['symptom'], string>> = {
  eighth: `Every ${dimensions.strips}th needle`,
  twentyFourth: `Every ${dimensions.columns}th needle`,
  rows: 'Rows repeated, missing or mirrored',
}

/** The heading of a row of the fault chart: what is visible on the bed. */
export const chartTitle = (row: Pick<ChartRow, 'symptom' | 'came'>): string => {
  const title = briefTitles[row.symptom] ?? symptomTitles[row.symptom]
  if (row.came === null) return title
  if (row.symptom === 'everything')
    return row.came === 'selected'
      ? 'Everything selected, or far too much'
      : 'Nothing selected, or far too little'
  return `${title} ${departureWords[row.came].brief}`
}

/** A fault's title without its explanation after the colon: Strip seized. */
export const shortTitle = (title: string): string => title.replace(/:.*$/, '')
