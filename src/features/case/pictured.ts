import { exampleNeedle } from '../../find/battery.ts'
import { type FaultView, faultViewOf } from '../../drawings/scene/fault-views.ts'
import { stretch } from '../../drawings/scene/machine/places.ts'
import { type CardLibrary, rowsOf, scenarioOf, type State } from '../../link/state.ts'
import { modulo } from '../../mechanism/bed.ts'
import { conditionOf } from '../../mechanism/condition.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Fault, faultId, indexKindsOf, isHoleFault, makeFault } from '../../mechanism/fault.ts'
import { type Needle, toNeedle } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { rowRead } from '../../mechanism/turn.ts'

/** Which fault of a case is shown close to, and the machine in which it is. */
export interface Pictured {
  readonly fault: Fault
  readonly view: FaultView
  /** The machine with this fault alone, as it is drawn. */
  readonly state: State
  /** The needle at which it is drawn, where its own is outside the stretch of the bed that is; null where it is not. */
  readonly needle: Needle | null
}

/** The needle of the stretch that is drawn with the same column, and so the same strip. */
const drawnNeedle = (needle: number): Needle =>
  toNeedle(stretch.first + modulo(needle - stretch.first, dimensions.columns))

/** The same fault at a needle of the stretch that is drawn. */
const drawnFault = ({ kind, at: places, amount }: Fault): Fault => {
  const kinds = indexKindsOf(kind)
  const indices = places.map((place, n) => (kinds[n] === 'needle' ? drawnNeedle(place) : place))
  return makeFault(kind, indices, amount)
}

const needleOf = ({ kind, at: places }: Fault): Needle | null => {
  const place = indexKindsOf(kind).indexOf('needle')
  return place < 0 ? null : toNeedle(at(places, place))
}

/** The first pass, from 1, that reads the row of a fault of a hole; the state's own for other faults. */
const passOf = (fault: Fault, state: State, library: CardLibrary): number => {
  if (!isHoleFault(fault)) return state.pass
  const condition = conditionOf(scenarioOf(state, library))
  for (let pass = 1; pass <= (condition.card?.length ?? 0); pass++)
    if (rowRead(condition, pass) === fault.at[0]) return pass
  return state.pass
}

const picturedAs = (fault: Fault, state: State, library: CardLibrary): Pictured | null => {
  const view = faultViewOf(fault.kind)
  if (!view) return null
  const isOfCard = view.place === 'card' || view.place === 'hole'
  if (isOfCard && rowsOf(state.card, library) === null) return null
  const drawn = drawnFault(fault)
  const alone = { ...state, faults: [drawn], note: '' }
  const pass = passOf(drawn, alone, library)
  const needle = needleOf(drawn)
  const way = pass % 2 === 1 ? 1 : -1
  return {
    fault,
    view,
    state: { ...alone, pass, at: view.at ?? (needle ?? exampleNeedle) + way * view.past },
    needle: faultId(drawn) === faultId(fault) ? null : needle,
  }
}

/** The first fault of a state whose part is drawn in three dimensions, and how it is; null where there is none. */
export const picturedOf = (state: State, library: CardLibrary): Pictured | null => {
  for (const fault of state.faults) {
    const found = picturedAs(fault, state, library)
    if (found) return found
  }
  return null
}
