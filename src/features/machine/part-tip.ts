import { boxOf, type PartHit } from '../../drawings/chain/part-at.ts'
import type { Box } from '../../drawings/shared/definitions.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import { partOf } from '../../mechanism/part.ts'
import { describePart } from '../../words/part-description.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { positionOnPage } from '../../browser/pointer.ts'
import { faultsOfPart } from './faults-of-part.ts'
import type { FigureView } from './figure-view.ts'

/** A part that the tip is about; pinned where somebody picked it, so that its buttons can be reached. */
interface ShownPart {
  readonly part: PartHit['part']
  readonly isPinned: boolean
}

/** The tip beside a part of the drawing, with its name and what it is doing now, and the ring round the part. */
export interface PartTip {
  readonly shown: () => ShownPart | null
  readonly show: (part: PartHit['part'], isPinned: boolean) => void
  readonly hide: () => void
  /** What the tip says, as one text. */
  readonly words: () => string
}

/** The space between a part and its tip, in pixels. */
const gap = 8

/** Puts the ring round a box of the picture, and the tip below it, or above where there is no room below. */
const placeAt = (svg: SVGSVGElement, box: Box, tip: HTMLElement, ring: HTMLElement): void => {
  const corner = positionOnPage(svg, box.x, box.y)
  const [width, height] = [box.width * corner.scale, box.height * corner.scale]
  Object.assign(ring.style, {
    left: `${corner.x}px`,
    top: `${corner.y}px`,
    width: `${width}px`,
    height: `${height}px`,
  })
  ring.hidden = false
  const room = svg.getBoundingClientRect()
  const left = Math.max(0, Math.min(room.width - tip.offsetWidth, corner.x + width / 2 - tip.offsetWidth / 2))
  const isBelow =
    corner.y + height + tip.offsetHeight + gap < room.height || corner.y < tip.offsetHeight + gap
  const top = isBelow ? corner.y + height + gap : corner.y - tip.offsetHeight - gap
  Object.assign(tip.style, {
    left: `${left}px`,
    top: `${Math.max(0, Math.min(top, room.height - tip.offsetHeight))}px`,
  })
}

/** Makes the tip, which goes with its part as the machine moves. `breakPart` is called by its button. */
export const createPartTip = (
  view: FigureView,
  store: MachineStore,
  breakPart: (part: PartHit['part']) => void,
): PartTip => {
  const tip = required(view.root, '.tip', HTMLElement)
  const ring = required(view.root, '.ring', HTMLElement)
  const name = required(tip, '.tip-name', HTMLElement)
  const doing = required(tip, '.tip-doing', HTMLElement)
  const breaks = required(tip, '.tip-break', HTMLButtonElement)
  const mends = required(tip, '.tip-mend', HTMLButtonElement)
  let shown: ShownPart | null = null

  const hide = (): void => {
    shown = null
    tip.hidden = true
    ring.hidden = true
  }
  const render = (): void => {
    if (!shown) return
    const { part, isPinned } = shown
    const { frame, run } = store.now()
    const box = boxOf(view.layout(), view.from(), frame, part)
    if (!box) {
      hide()
      return
    }
    const words = describePart(run, frame, partOf(part))
    name.textContent = words.name
    doing.textContent = words.doing
    breaks.hidden = !isPinned || faultsOfPart(part).length === 0
    mends.hidden = !isPinned || !run.scenario.faults.some((fault) => partOfFault(fault) === part)
    tip.hidden = false
    tip.toggleAttribute('data-pinned', isPinned)
    placeAt(view.svg(), box, tip, ring)
  }
  breaks.addEventListener('click', () => {
    if (shown) breakPart(shown.part)
    hide()
  })
  mends.addEventListener('click', () => {
    const part = shown?.part
    store.set({ faults: store.now().state.faults.filter((fault) => partOfFault(fault) !== part) })
    hide()
    view.root.querySelector<HTMLElement>('.parts')?.focus({ preventScroll: true })
  })
  store.subscribe(() => {
    requestAnimationFrame(render)
  })
  return {
    shown: () => shown,
    show: (part, isPinned) => {
      shown = { part, isPinned }
      render()
    },
    hide,
    words: () => `${name.textContent}. ${doing.textContent}`,
  }
}
