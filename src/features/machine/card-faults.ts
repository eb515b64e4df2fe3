import type { Fault } from '../../mechanism/fault.ts'

/** Whether a fault sits at a place of the card itself. */
const isInCard = ({ kind }: Fault): boolean => kind === 'card.torn' || kind === 'card.blocked'

/**
 * The faults that can stay when a card of so many rows is put in, and a sentence about those that can't; it is empty
 * where all stay.
 */
export const faultsOnCard = (
  faults: readonly Fault[],
  rows: number,
): { readonly faults: readonly Fault[]; readonly said: string } => {
  const kept = faults.filter((fault) => !isInCard(fault) || (fault.at[0] ?? 0) <= rows)
  const gone = faults.length - kept.length
  if (gone === 0) return { faults, said: '' }
  const length = rows === 1 ? '1 row' : `${rows} rows`
  const which =
    gone === 1
      ? 'a fault in a later row of the last card is'
      : `${gone} faults in later rows of the last card are`
  return { faults: kept, said: `This card has only ${length}, so ${which} gone.` }
}
