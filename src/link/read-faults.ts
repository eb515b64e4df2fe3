import { contradict, type Fault, faultId, readFault } from '../mechanism/fault.ts'
import { limits } from './state.ts'
import { oneLine, quote, type Troubles } from './troubles.ts'

/** Adds a fault; of two that can't both be so the later stands. */
const add = (faults: Fault[], fault: Fault, troubles: Troubles): void => {
  const id = faultId(fault)
  const rival = faults.findIndex((other) => contradict(fault, other))
  if (rival < 0) {
    faults.push(fault)
    return
  }
  const [gone] = faults.splice(rival, 1)
  if (gone && faultId(gone) !== id)
    troubles.changed(
      `${quote(faultId(gone))} and ${quote(id)} can't both be so; the later, ${quote(id)}, stands.`,
    )
  add(faults, fault, troubles)
}

const compareIds = (one: Fault, other: Fault): number => (faultId(one) < faultId(other) ? -1 : 1)

/**
 * Reads a link's faults, for a card of so many rows (null: no card). They come in the order of their ids, so that one
 * state has one form. Only the first of very many are read: a page must not stand still over a hostile link.
 */
export const readFaults = (ids: readonly string[], rows: number | null, troubles: Troubles): Fault[] => {
  const faults: Fault[] = []
  for (const id of ids.slice(0, limits.faults)) {
    const reading = readFault(id)
    if (!reading.fault) {
      troubles.leftOut(`The fault ${quote(id)} can't be read: ${oneLine(reading.reason, 160)}.`)
      continue
    }
    if (reading.remark !== null) troubles.changed(`In the fault ${quote(id)}, ${reading.remark}.`)
    const row = reading.fault.at[0] ?? 0
    const isHole = reading.fault.kind === 'card.torn' || reading.fault.kind === 'card.blocked'
    if (isHole && rows !== null && row > rows) {
      troubles.leftOut(`The fault ${quote(id)} is left out: this card has no row ${row}, only ${rows}.`)
      continue
    }
    add(faults, reading.fault, troubles)
  }
  if (ids.length > limits.faults)
    troubles.leftOut(`The link names ${ids.length} faults; the first ${limits.faults} are read.`)
  return faults.sort(compareIds)
}
