import { type Fault, faultId } from '../mechanism/fault.ts'
import { contradict, contradictionWords, sortedFaults, withLast } from '../mechanism/fault-list.ts'
import { readFault } from '../mechanism/read-fault.ts'
import { at } from '../mechanism/lookup.ts'
import { dimensionsOf } from '../mechanism/own.ts'
import type { Row } from './codec.ts'
import { limits, rowsOf, type State } from './state.ts'
import { oneLine, quote, type Troubles } from './troubles.ts'

/** Says that a fault can't be read, and why. */
export const sayUnreadableFault = (id: string, reason: string, troubles: Troubles): void => {
  if (id.trim() === '')
    troubles.leftOut('nameless fault', 'The link has a fault without a name.', ', which is left out.')
  else troubles.leftOut('unreadable fault', `The fault ${quote(id)} can't be read: ${oneLine(reason, 160)}.`)
}

/** Adds a fault; of two that can't both be so, the later is kept. */
const withLater = (faults: readonly Fault[], fault: Fault, troubles: Troubles): Fault[] => {
  const id = faultId(fault)
  for (const rival of faults.filter((other) => contradict(fault, other)).map(faultId))
    if (rival !== id) troubles.changed('contradiction', contradictionWords(quote(rival), quote(id)))
  return withLast(faults, fault)
}

/** The row of a card that a fault's hole is in; null for a fault of another kind. */
const rowOfHole = (fault: Fault): number | null =>
  fault.kind === 'card.torn' || fault.kind === 'card.blocked' ? at(fault.at, 0) : null

/** The machine that faults are read for: its card's rows (null: no card), and how many needles its bed has. */
interface Machine {
  readonly rows: number | null
  readonly needles: number
}

/** Reads faults by their ids. */
const readFaults = (ids: readonly string[], { rows, needles }: Machine, troubles: Troubles): Fault[] => {
  let faults: Fault[] = []
  for (const id of ids) {
    const reading = readFault(id, needles)
    if (reading.kind === 'refused') {
      sayUnreadableFault(id, reading.reason, troubles)
      continue
    }
    if (reading.remark !== null)
      troubles.changed('changed fault', `In the fault ${quote(id)}, ${reading.remark}.`)
    const row = rowOfHole(reading.fault)
    if (row !== null && rows !== null && row > rows) {
      troubles.leftOut(
        'missing row',
        `The fault ${quote(id)} is left out: this card has no row ${row}, only ${rows}.`,
      )
      continue
    }
    faults = withLater(faults, reading.fault, troubles)
  }
  return sortedFaults(faults)
}

/** What is broken, one pair a fault. Only the first of very many are read: a hostile link must not stop a page. */
export const faultsRow: Row<readonly Fault[], State> = {
  keys: ['break'],
  isList: true,
  usual: () => [],
  parse(pairs, { others, library, troubles }) {
    const ids = pairs.slice(0, limits.faults).map(([, id]) => id)
    const rows = rowsOf(others('card'), library)?.length ?? null
    const { needles } = dimensionsOf(others('own'))
    const faults = readFaults(ids, { rows, needles }, troubles)
    if (pairs.length > limits.faults)
      troubles.leftOut(
        'too many faults',
        `The link names ${pairs.length} faults, more than ${limits.faults}.`,
        `; the first ${limits.faults} are read.`,
      )
    return faults
  },
  write: (faults) =>
    faults
      .map(faultId)
      .sort()
      .map((id) => ['break', id]),
}
