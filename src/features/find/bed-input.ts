import type { NeedleMark, BedMarks } from '../../link/bed-marks.ts'
import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { required, tell } from '../../browser/dom.ts'
import { type BedGrid, createBedGrid } from './bed-grid.ts'
import { expectedIn, markAs, notedAs } from './marks.ts'
import type { FindStore } from './store.ts'

/** What a tap makes of a needle: right, wrong, not looked at, and right again. */
const next: Readonly<Record<NeedleMark, NeedleMark>> = { r: 'w', w: 'n', n: 'r', u: 'r' }

const rightNeedle = dimensions.needles / 2

/** The needles from one to another, both included. */
const between = (one: number, other: number): number[] =>
  Array.from({ length: Math.abs(other - one) + 1 }, (_, n) => Math.min(one, other) + n)

const withMark = (marks: BedMarks, needles: readonly number[], mark: NeedleMark): BedMarks => {
  const changed = new Set(needles)
  return marks.map((old, index) => (changed.has(index) ? mark : old))
}

/** The bed of the pass in hand, on which one says how its needles came out. */
export interface BedNotes {
  /** Points at needles to look at again, and goes to the first; the next change to the pass ends it. */
  readonly pointAt: (needles: readonly number[]) => void
}

/** Brings the bed of the page to life. */
export const bindBed = (root: HTMLElement, store: FindStore): BedNotes => {
  const grid = createBedGrid(required(root, '.bed-grid', HTMLElement))
  const here = required(root, '.bed-here', HTMLElement)
  const paged = matchMedia('(pointer: coarse), (max-width: 54.99rem)')
  let cursor = rightNeedle
  /** Where a range began; the cursor is its other end. */
  let anchor = rightNeedle

  const range = (): number[] => between(anchor, cursor)
  const lineOf = (needle: number): number => grid.lines.findIndex((line) => line.includes(needle))
  const put = (needles: readonly number[], mark: NeedleMark): void => {
    store.setPass({ marks: withMark(store.pass().marks, needles, mark) })
  }

  const showCursor = (): void => {
    const chosen = new Set(range())
    for (const line of grid.lines)
      for (const needle of line) {
        const cell = grid.cell(needle)
        cell.tabIndex = needle === cursor ? 0 : -1
        cell.toggleAttribute('data-chosen', chosen.size > 1 && chosen.has(needle))
        cell.toggleAttribute('data-cursor', needle === cursor)
      }
    const line = lineOf(cursor)
    for (const [n, row] of [...grid.root.children].entries()) row.toggleAttribute('data-shown', n === line)
    const ends = grid.lines[line] ?? []
    tell(
      required(root, '.bed-page', HTMLElement),
      `${needleName(ends[0] ?? 0)} to ${needleName(ends.at(-1) ?? 0)}`,
    )
    required(root, '.bed-back', HTMLButtonElement).disabled = line === 0
    required(root, '.bed-on', HTMLButtonElement).disabled = line === grid.lines.length - 1
    const name =
      chosen.size > 1
        ? `${needleName(Math.min(...chosen))} to ${needleName(Math.max(...chosen))}`
        : needleName(cursor)
    tell(here, name)
  }
  const goTo = (needle: number, isRange: boolean, focus: FocusOptions | null): void => {
    cursor = Math.max(0, Math.min(dimensions.needles - 1, needle))
    if (!isRange) anchor = cursor
    showCursor()
    if (focus) grid.cell(cursor).focus(focus)
  }
  /** Marks the needles in hand as a tap does, all like the one where the range began. */
  const cycle = (): void => {
    put(range(), next[store.pass().marks[anchor] ?? 'r'])
  }

  bindPointer(grid, {
    start: (needle, isRange) => {
      // The bed must not scroll away under the pointer.
      goTo(needle, isRange, { preventScroll: true })
      const before = store.pass().marks
      const mark = next[before[isRange ? anchor : needle] ?? 'r']
      put(range(), mark)
      return (to) => {
        if (to === cursor) return
        goTo(to, true, null)
        store.setPass({ marks: withMark(before, range(), mark) }, true)
      }
    },
  })
  grid.root.addEventListener('keydown', (event) => {
    const down = paged.matches ? dimensions.strips : dimensions.columns
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: 1,
      ArrowLeft: -1,
      ArrowDown: down,
      ArrowUp: -down,
      PageDown: dimensions.columns,
      PageUp: -dimensions.columns,
      Home: -dimensions.needles,
      End: dimensions.needles,
    }
    const step = steps[event.key]
    if (step !== undefined && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault()
      goTo(cursor + step, event.shiftKey, {})
    } else if (event.key === ' ' || event.key === 'Enter') {
      event.preventDefault()
      cycle()
    }
  })

  const page = (by: number): void => {
    const line = grid.lines[lineOf(cursor) + by]
    if (line?.[0] !== undefined) goTo(line[0], false, null)
  }
  const on = (selector: string, act: () => void): void => {
    required(root, selector, HTMLButtonElement).addEventListener('click', act)
  }
  on('.bed-back', () => {
    page(-1)
  })
  on('.bed-on', () => {
    page(1)
  })

  /** Every so many needles, from the one in hand to both ends of the bed, came out as that one did. */
  const everyLike = (step: number): void => {
    const pass = store.pass()
    const asked = expectedIn(pass, store.library)
    const seen = notedAs(pass.marks[cursor] ?? 'r', asked[cursor] ?? 'plain')
    store.setPass({
      marks: pass.marks.map((mark, index) =>
        (index - cursor) % step === 0 ? markAs(seen, asked[index] ?? 'plain') : mark,
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
  on('.rest-right', () => {
    put(rest(), 'r')
  })
  on('.rest-unseen', () => {
    put(rest(), 'n')
  })
  on('.did-not-move', () => {
    put(range(), 'u')
  })

  const doubt = (needles: readonly number[]): void => {
    const doubted = new Set(needles)
    for (const line of grid.lines)
      for (const needle of line) grid.cell(needle).toggleAttribute('data-doubt', doubted.has(needle))
  }
  store.subscribe(() => {
    const pass = store.pass()
    grid.show(pass.marks, expectedIn(pass, store.library))
    doubt([])
  })
  showCursor()
  return {
    pointAt: (needles) => {
      doubt(needles)
      if (needles[0] !== undefined) goTo(needles[0], false, {})
    },
  }
}

interface Dragging {
  /** Begins with a needle; gives what to do with each needle that the pointer comes to after it. */
  readonly start: (needle: number, isRange: boolean) => (to: number) => void
}

/** A press marks a needle, and a drag the needles on the way. */
const bindPointer = (grid: BedGrid, { start }: Dragging): void => {
  let drag: ((to: number) => void) | null = null
  const end = (): void => {
    drag = null
  }
  grid.root.addEventListener('pointerdown', (event) => {
    const needle = grid.needleAt(event.target)
    if (needle === null || event.button !== 0 || event.pointerType === 'touch') return
    event.preventDefault()
    drag = start(needle, event.shiftKey)
    grid.root.setPointerCapture(event.pointerId)
  })
  grid.root.addEventListener('pointermove', (event) => {
    if (!drag) return
    const to = grid.needleAt(document.elementFromPoint(event.clientX, event.clientY))
    if (to !== null) drag(to)
  })
  grid.root.addEventListener('pointerup', end)
  grid.root.addEventListener('pointercancel', end)
  // A finger may be about to scroll: it marks once it is lifted, or once it has moved along the line.
  bindTouch(grid, start)
}

/** How far a finger moves sideways, in pixels, before it drags. */
const slack = 12

const bindTouch = (grid: BedGrid, start: Dragging['start']): void => {
  let first: { needle: number; x: number; drag: ((to: number) => void) | null } | null = null
  grid.root.addEventListener('pointerdown', (event) => {
    const needle = grid.needleAt(event.target)
    if (event.pointerType === 'touch' && needle !== null) first = { needle, x: event.clientX, drag: null }
  })
  grid.root.addEventListener('pointermove', (event) => {
    if (!first) return
    if (!first.drag && Math.abs(event.clientX - first.x) > slack) first.drag = start(first.needle, false)
    const to = grid.needleAt(document.elementFromPoint(event.clientX, event.clientY))
    if (to !== null) first.drag?.(to)
  })
  grid.root.addEventListener('pointerup', () => {
    if (first && !first.drag) start(first.needle, false)
    first = null
  })
  grid.root.addEventListener('pointercancel', () => {
    first = null
  })
}
