import type { Fault } from '../../mechanism/fault.ts'

/** Whether a fault is at a hole of the card itself, in a row that a card of so many rows does not have. */
export const isBeyondCard = (fault: Fault, rows: number): boolean =>
  (fault.kind === 'card.torn' || fault.kind === 'card.blocked') && fault.at[0] > rows

/**
 * The faults that can stay when a card of so many rows is put in, and a sentence about those that can't; it is empty
 * where all stay.
 */
export const faultsOnCard = (
  faults: readonly Fault[],
  rows: number,
): { readonly faults: readonly Fault[]; readonly said: string } => {
  const kept = faults.filter((fault) => !isBeyondCard(fault, rows))
  const gone = faults.length - kept.length
  if (gone === 0) return { faults, said: '' }
  const length = rows === 1 ? '1 row' : `${rows} rows`
  const which =
    gone === 1
      ? 'a fault in a later row of the last card is'
      : `${gone} faults in later rows of the last card are`
  return { faults: kept, said: `This card has only ${length}, so ${which} gone.` }
}
