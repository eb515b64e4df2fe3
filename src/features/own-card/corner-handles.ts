import { at } from '../../mechanism/lookup.ts'
import {
  areGrid,
  type Corners,
  type PicturePoint,
  projectionTo,
  wholePicture,
  withCorner,
} from '../../link/picture-corners.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { element, required } from '../../browser/dom.ts'
import { withUnit } from '../../words/lists.ts'

/** How far a key moves a corner, as a share of the picture's width or height; with Shift, ten times as far. */
const keyStep = 1 / 400

/** The most lines across that are drawn; of more rows, some lines are left out. */
const mostLines = 40

/** The corners, clockwise from the upper left one. */
const names = ['upper left', 'upper right', 'lower right', 'lower left'] as const

/** Where an arrow key leads: columns and rows of the picture, to the right and down. */
const ways: Readonly<Record<string, readonly [across: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** The four handles on a picture that say where the card's grid is in it. */
export interface CornerHandles {
  /** The corners, in pixels of the picture. */
  readonly corners: () => Corners
  /** Puts the corners at those of a picture of this size, in pixels. */
  readonly reset: (width: number, height: number) => void
  /** Draws the grid of so many rows between the corners; none where they make none. */
  readonly drawGrid: (rows: number) => void
}

/** The grid's lines as a path. */
const gridPath = (corners: Corners, rows: number): string => {
  const project = projectionTo(corners)
  const line = (from: PicturePoint, to: PicturePoint): string =>
    `M${from.x.toFixed(1)} ${from.y.toFixed(1)}L${to.x.toFixed(1)} ${to.y.toFixed(1)}`
  const { columns } = dimensions
  const down = Array.from({ length: columns + 1 }, (_, n) =>
    line(project(n / columns, 0), project(n / columns, 1)),
  )
  const step = Math.ceil(rows / mostLines)
  const across = Array.from({ length: Math.ceil(rows / step) }, (_, n) =>
    line(project(0, (n * step) / rows), project(1, (n * step) / rows)),
  )
  return [...down, ...across, line(project(0, 1), project(1, 1))].join('')
}

/** Makes the handles on a picture; `moved` is called when one has moved: dragged, pressed to, or by an arrow key. */
export const createCornerHandles = (host: HTMLElement, moved: () => void): CornerHandles => {
  const lines = required(host, 'svg', SVGSVGElement)
  const path = required(host, 'path', SVGPathElement)
  let size = { width: 1, height: 1 }
  let corners = wholePicture(1, 1)

  const handles = names.map(() =>
    element('button', { type: 'button', class: 'own-corner', 'aria-describedby': 'own-corner-help' }),
  )
  host.append(...handles)
  const show = (): void => {
    for (const [n, { x, y }] of corners.entries()) {
      const handle = handles[n]
      const [across, down] = [(100 * x) / size.width, (100 * y) / size.height]
      if (!handle) throw new RangeError(`there is no corner ${n}`)
      handle.style.left = `${across}%`
      handle.style.top = `${down}%`
      handle.setAttribute(
        'aria-label',
        `Corner ${at(names, n)}: ${withUnit(Math.round(across), '%')} across, ${withUnit(Math.round(down), '%')} down`,
      )
    }
  }
  const within = (value: number, most: number): number => Math.min(most, Math.max(0, value))
  const put = (which: number, { x, y }: PicturePoint): void => {
    corners = withCorner(corners, which, { x: within(x, size.width), y: within(y, size.height) })
    show()
    moved()
  }
  /** A pointer's position in pixels of the picture. */
  const pointOf = ({ clientX, clientY }: MouseEvent): PicturePoint => {
    const box = host.getBoundingClientRect()
    return {
      x: ((clientX - box.left) / box.width) * size.width,
      y: ((clientY - box.top) / box.height) * size.height,
    }
  }

  // Who can't drag presses where a corner belongs, and the nearest goes there.
  host.addEventListener('click', (event) => {
    if (event.target instanceof Element && event.target.closest('.own-corner')) return
    const point = pointOf(event)
    const away = corners.map(({ x, y }) => Math.hypot(x - point.x, y - point.y))
    put(away.indexOf(Math.min(...away)), point)
  })
  for (const [which, handle] of handles.entries()) {
    const corner = (): PicturePoint => corners[which] ?? { x: 0, y: 0 }
    /** From where it was pressed to the corner: a finger beside it does not make it jump. */
    let grip: PicturePoint | null = null
    handle.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return
      const { x, y } = pointOf(event)
      grip = { x: corner().x - x, y: corner().y - y }
      handle.setPointerCapture(event.pointerId)
    })
    handle.addEventListener('pointermove', (event) => {
      if (!grip) return
      const { x, y } = pointOf(event)
      put(which, { x: x + grip.x, y: y + grip.y })
    })
    for (const end of ['pointerup', 'pointercancel'])
      handle.addEventListener(end, () => {
        grip = null
      })
    handle.addEventListener('keydown', (event) => {
      const way = ways[event.key]
      if (!way || event.altKey || event.ctrlKey || event.metaKey) return
      event.preventDefault()
      const step = keyStep * (event.shiftKey ? 10 : 1)
      const { x, y } = corner()
      put(which, { x: x + way[0] * step * size.width, y: y + way[1] * step * size.height })
    })
  }
  return {
    corners: () => corners,
    reset: (width, height) => {
      size = { width, height }
      corners = wholePicture(width, height)
      host.style.setProperty('--shape', String(width / height))
      lines.setAttribute('viewBox', `0 0 ${width} ${height}`)
      show()
    },
    drawGrid: (rows) => {
      path.setAttribute('d', rows > 0 && areGrid(corners) ? gridPath(corners, rows) : '')
    },
  }
}
