import { boxOf, type Hit, partAt, partRows } from '../../drawings/chain/hit.ts'
import { partOfFault } from '../../mechanism/fault.ts'
import { faultKinds, type FaultKindName } from '../../mechanism/fault-kinds.ts'
import { describePart } from '../../words/part-description.ts'
import { positionIn, positionOnPage } from '../../browser/pointer.ts'
import type { FigureView } from './figure-view.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

/** The kinds of fault that a part can have, in the catalogue's order. */
export const faultsOfPart = (part: string): FaultKindName[] => {
  const [kind = ''] = part.split('.')
  const names = Object.keys(faultKinds) as FaultKindName[]
  const also: Readonly<Record<string, readonly string[]>> = {
    card: ['card.', 'pawl.', 'turn.'],
    sweep: ['sweep.', 'belt.'],
    needle: ['needle.', 'catch.', 'retainer.'],
    gate: [`${part}.`],
    carriage: [],
  }
  return names.filter((name) => (also[kind] ?? [`${kind}.`]).some((start) => name.startsWith(start)))
}

interface Shown {
  readonly part: string
  readonly isPinned: boolean
}

/** A press of a pointer: what it met, and where, in pixels of the screen. */
interface Press {
  readonly hit: Hit | null
  readonly x: number
  readonly y: number
}

/** How far a pointer may stray between press and release for a click, in pixels of the screen; further is a drag. */
const stray = 5

/** What the inspector calls when somebody picks a part: true where the pick was wanted elsewhere. */
type Picked = (hit: Hit) => boolean

/** Names a part under the pointer, under a finger or under the arrow keys, and says what it is doing now. */
export const inspectParts = (
  stage: FigureView,
  store: MachineStore,
  picked: Picked,
  breakPart: (hit: Hit) => void,
): void => {
  const tip = stage.root.querySelector<HTMLElement>('.tip')
  const ring = stage.root.querySelector<HTMLElement>('.ring')
  const name = tip?.querySelector('.tip-name')
  const doing = tip?.querySelector('.tip-doing')
  const button = tip?.querySelector<HTMLButtonElement>('.tip-break')
  const mend = tip?.querySelector<HTMLButtonElement>('.tip-mend')
  const spoken = stage.root.querySelector('.spoken')
  if (!tip || !ring || !name || !doing || !button || !mend || !spoken)
    throw new Error('the figure lacks its tip')
  let shown: Shown | null = null
  let press: Press = { hit: null, x: 0, y: 0 }

  const hide = (): void => {
    shown = null
    tip.hidden = true
    ring.hidden = true
  }
  const render = (): void => {
    if (!shown) return
    const { frame, run } = store.now()
    const box = boxOf(stage.layout(), stage.from(), frame, shown.part)
    if (!box) {
      hide()
      return
    }
    const words = describePart(run, frame, shown.part)
    name.textContent = words.name
    doing.textContent = words.doing
    button.hidden = !shown.isPinned || faultsOfPart(shown.part).length === 0
    mend.hidden = !shown.isPinned || !run.scenario.faults.some((fault) => partOfFault(fault) === shown?.part)
    tip.hidden = false
    tip.toggleAttribute('data-pinned', shown.isPinned)
    const svg = stage.svg()
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
    const left = Math.max(
      0,
      Math.min(room.width - tip.offsetWidth, corner.x + width / 2 - tip.offsetWidth / 2),
    )
    const isBelow = corner.y + height + tip.offsetHeight + 8 < room.height || corner.y < tip.offsetHeight + 8
    const top = isBelow ? corner.y + height + 8 : corner.y - tip.offsetHeight - 8
    Object.assign(tip.style, {
      left: `${left}px`,
      top: `${Math.max(0, Math.min(top, room.height - tip.offsetHeight))}px`,
    })
  }
  const show = (part: string, isPinned: boolean): void => {
    shown = { part, isPinned }
    render()
  }
  const hitOf = (event: MouseEvent): Hit | null => {
    const svg = stage.svg()
    const { x, y } = positionIn(svg, event)
    return partAt(stage.layout(), stage.from(), store.now().frame, x, y)
  }

  for (const svg of stage.root.querySelectorAll<SVGSVGElement>('[data-figure="chain"] svg')) {
    svg.addEventListener('pointermove', (event) => {
      if (event.pointerType !== 'mouse' || shown?.isPinned || stage.root.dataset.dragging) return
      const hit = hitOf(event)
      if (hit) show(hit.part, false)
      else hide()
    })
    svg.addEventListener('pointerleave', () => {
      if (!shown?.isPinned) hide()
    })
    svg.addEventListener('pointerdown', (event) => {
      press = { hit: hitOf(event), x: event.clientX, y: event.clientY }
    })
    svg.addEventListener('click', (event) => {
      const hit = hitOf(event)
      const isDrag = Math.hypot(event.clientX - press.x, event.clientY - press.y) > stray
      if (isDrag || !hit || hit.part !== press.hit?.part) {
        hide()
        return
      }
      if (!picked(hit)) show(hit.part, true)
      else hide()
    })
  }
  button.addEventListener('click', () => {
    if (shown) breakPart(press.hit?.part === shown.part ? press.hit : { part: shown.part })
    hide()
  })
  mend.addEventListener('click', () => {
    const part = shown?.part
    store.set({ faults: store.now().state.faults.filter((fault) => partOfFault(fault) !== part) })
    hide()
    stage.root.querySelector<HTMLElement>('.parts')?.focus({ preventScroll: true })
  })
  document.addEventListener('pointerdown', (event) => {
    if (shown?.isPinned && event.target instanceof Node && !stage.root.contains(event.target)) hide()
  })
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') hide()
  })
  walkByKeys(
    stage,
    (part) => {
      show(part, true)
      spoken.textContent = `${name.textContent}. ${doing.textContent}`
    },
    () => shown?.part ?? null,
    () => {
      if (!shown || picked({ part: shown.part }) || faultsOfPart(shown.part).length === 0) return
      breakPart({ part: shown.part })
    },
    hide,
  )
  store.subscribe(() => {
    requestAnimationFrame(render)
  })
}

/** Arrow keys go from part to part along the chain, Enter picks one. */
const walkByKeys = (
  stage: FigureView,
  go: (part: string) => void,
  current: () => string | null,
  enter: () => void,
  leave: () => void,
): void => {
  const parts = stage.root.querySelector<HTMLElement>('.parts')
  let memory: string | null = null
  parts?.addEventListener('keydown', (event) => {
    const rows = partRows(stage.layout(), stage.from())
    const here = current() ?? memory
    const row = Math.max(
      0,
      rows.findIndex((some) => here !== null && some.includes(here)),
    )
    const line = rows[row] ?? []
    const place = here === null ? -1 : line.indexOf(here)
    const share = line.length > 1 ? Math.max(0, place) / (line.length - 1) : 0.5
    const moved = (by: number): string | undefined => {
      const next = rows[Math.max(0, Math.min(rows.length - 1, row + by))] ?? []
      return next[Math.round(share * (next.length - 1))]
    }
    const next: Readonly<Record<string, () => string | undefined>> = {
      ArrowRight: () => line[Math.min(line.length - 1, place + 1)],
      ArrowLeft: () => line[Math.max(0, place - 1)],
      ArrowDown: () => (here === null ? line[0] : moved(1)),
      ArrowUp: () => moved(-1),
      Home: () => line[0],
      End: () => line.at(-1),
    }
    if (event.key === 'Enter' || event.key === ' ') enter()
    else {
      const part = next[event.key]?.()
      if (part === undefined) return
      memory = part
      go(part)
    }
    event.preventDefault()
  })
  parts?.addEventListener('blur', leave)
}
