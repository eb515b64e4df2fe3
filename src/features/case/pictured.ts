import { exampleNeedle } from '../../find/battery.ts'
import { faultViewOf } from '../../drawings/scene/fault-views.ts'
import { stretch } from '../../drawings/scene/machine/places.ts'
import { type CardLibrary, scenarioOf, type State } from '../../link/state.ts'
import { modulo } from '../../mechanism/bed.ts'
import { conditionOf } from '../../mechanism/condition.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { type Fault, faultId, indexKindsOf, isHoleFault, makeFault } from '../../mechanism/fault.ts'
import { type Needle, toNeedle } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { rowRead } from '../../mechanism/turn.ts'

/** How a fault of a case is drawn close to. */
export interface Pictured {
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

/** How a fault of a state is drawn; null where its kind has no picture. */
export const picturedOf = (fault: Fault, state: State, library: CardLibrary): Pictured | null => {
  const view = faultViewOf(fault.kind)
  if (!view) return null
  const drawn = drawnFault(fault)
  const alone = { ...state, faults: [drawn], note: '' }
  const pass = passOf(drawn, alone, library)
  const needle = needleOf(drawn)
  const way = pass % 2 === 1 ? 1 : -1
  return {
    state: { ...alone, pass, at: view.at ?? (needle ?? exampleNeedle) + way * view.past },
    needle: faultId(drawn) === faultId(fault) ? null : needle,
  }
}
