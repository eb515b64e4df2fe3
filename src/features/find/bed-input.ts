import { type BedMarks, markAs, type NeedleMark, notedAs } from '../../link/bed-marks.ts'
import { needlesAt } from '../../find/bed-needles.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { slotOf } from '../../mechanism/indices.ts'
import { at } from '../../mechanism/lookup.ts'
import { required } from '../../browser/dom.ts'
import { type BedCursor, createBedCursor } from './bed-cursor.ts'
import { type BedGrid, createBedGrid } from './bed-grid.ts'
import { bindPointer } from './bed-pointer.ts'
import { expectedIn } from './marks.ts'
import type { FindStore } from './store.ts'

/** What a tap makes of a needle: right, wrong, not looked at, and right again. */
const next: Readonly<Record<NeedleMark, NeedleMark>> = { r: 'w', w: 'n', n: 'r', u: 'r' }

const withMark = (marks: BedMarks, needles: readonly number[], mark: NeedleMark): BedMarks => {
  const changed = new Set(needles)
  return marks.map((old, index) => (changed.has(index) ? mark : old))
}

/** Marks needles of the current pass. */
const put = (store: FindStore, needles: readonly number[], mark: NeedleMark): void => {
  store.setPass({ marks: withMark(store.pass().marks, needles, mark) })
}

/** A press or a drag marks needles as a tap does, all like the one where it began. */
const bindDrag = (grid: BedGrid, cursor: BedCursor, store: FindStore): void => {
  bindPointer(grid, (needle, isRange) => {
    // The bed must not scroll away under the pointer.
    cursor.goTo(needle, isRange, { preventScroll: true })
    const before = store.pass().marks
    const mark = next[at(before, isRange ? cursor.anchor() : needle)]
    put(store, cursor.range(), mark)
    return (to) => {
      if (to === cursor.needle()) return
      cursor.goTo(to, true, null)
      store.setPass({ marks: withMark(before, cursor.range(), mark) }, true)
    }
  })
}

/** Keys go from needle to needle, with shift over a range, and mark the chosen needles. */
const bindKeys = (grid: BedGrid, cursor: BedCursor, store: FindStore): void => {
  const paged = matchMedia('(pointer: coarse), (max-width: 54.99rem)')
  grid.root.addEventListener('keydown', (event) => {
    const down = paged.matches ? dimensions.strips : dimensions.columns
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: 1,
      ArrowLeft: -1,
      ArrowDown: down,
      ArrowUp: -down,
      PageDown: dimensions.columns,
      PageUp: -dimensions.columns,
      Home: -grid.count(),
      End: grid.count(),
    }
    const step = steps[event.key]
    if (step !== undefined && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault()
      cursor.goTo(cursor.needle() + step, event.shiftKey, {})
    } else if (event.key === ' ' || event.key === 'Enter') {
      event.preventDefault()
      put(store, cursor.range(), next[at(store.pass().marks, cursor.anchor())])
    }
  })
}

/** The buttons that mark many needles at once. */
const bindButtons = (root: HTMLElement, cursor: BedCursor, store: FindStore): void => {
  const on = (selector: string, act: () => void): void => {
    required(root, selector, HTMLButtonElement).addEventListener('click', act)
  }
  /** Every so many needles, from the chosen one to both ends of the bed, came out as that one did: 1 for the whole bed. */
  const everyLike = (step: number): void => {
    const pass = store.pass()
    const expected = expectedIn(pass, store.library, store.now().session)
    const needle = cursor.needle()
    const noted = notedAs(at(pass.marks, needle), at(expected, needle))
    store.setPass({
      marks: pass.marks.map((mark, index) =>
        (index - needle) % step === 0 ? markAs(noted, at(expected, index)) : mark,
      ),
    })
  }
  /** What is not marked wrong. */
  const rest = (): number[] =>
    store.pass().marks.flatMap((mark, index) => (mark === 'r' || mark === 'n' ? [index] : []))
  on('.every-eighth', () => {
    everyLike(dimensions.strips)
  })
  on('.every-column', () => {
    everyLike(dimensions.columns)
  })
  on('.every-needle', () => {
    everyLike(1)
  })
  on('.rest-right', () => {
    put(store, rest(), 'r')
  })
  on('.rest-unseen', () => {
    put(store, rest(), 'n')
  })
  on('.did-not-move', () => {
    put(store, cursor.range(), 'u')
  })
}

/** The bed of the current pass, on which one says how its needles came out. */
export interface BedNotes {
  /** Points at needles to look at again, and goes to the first; the next change to the pass ends it. */
  readonly pointAt: (needles: readonly number[]) => void
}

/** Brings the bed of the page to life. */
export const bindBed = (root: HTMLElement, store: FindStore): BedNotes => {
  const grid = createBedGrid(required(root, '.bed-grid', HTMLElement), store.now().session)
  const cursor = createBedCursor(root, grid)
  bindDrag(grid, cursor, store)
  bindKeys(grid, cursor, store)
  bindButtons(root, cursor, store)
  const doubt = (needles: readonly number[]): void => {
    const doubted = new Set(needles)
    for (const needle of grid.lines().flat())
      grid.cell(needle).toggleAttribute('data-doubt', doubted.has(needle))
  }
  store.subscribe(({ session }, before) => {
    const isOther = before !== null && needlesAt(before.session).length !== needlesAt(session).length
    if (isOther || (before && before.session.columnOne !== session.columnOne)) grid.arrange(session)
    if (isOther) cursor.begin()
    else if (before && before.session.columnOne !== session.columnOne) cursor.show()
    const pass = store.pass()
    grid.show(pass.marks, expectedIn(pass, store.library, session))
    doubt([])
  })
  return {
    pointAt: (needles) => {
      const slots = needles.map((needle) => slotOf(needle, grid.count()))
      doubt(slots)
      if (slots[0] !== undefined) cursor.goTo(slots[0], false, {})
    },
  }
}
