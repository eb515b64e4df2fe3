import type { Figure } from '../../drawings/shared/figure-contract.ts'
import { loadFigure } from '../../browser/load-figure.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

const space = 'http://www.w3.org/2000/svg'

/** A figure shown beside the machine, in its narrow shape, on the same state. */
export interface SideFigure {
  /** Shows a figure, or nothing. */
  readonly show: (id: string | null) => void
  /** Draws again although the state is the same. */
  readonly redraw: () => void
}

/** Puts a figure into an empty place of the page; `say` is given it in words once the carriage rests. */
export const createSideFigure = (
  place: HTMLElement,
  store: MachineStore,
  choices: () => { readonly floatLimit?: number } = () => ({}),
  say: (words: string) => void = () => undefined,
): SideFigure => {
  let figure: Figure | null = null
  let wanted: string | null = null
  let svg: SVGSVGElement | null = null
  let waiting = false
  let pending: ReturnType<typeof setTimeout> | undefined

  const draw = (): void => {
    waiting = false
    if (!figure || !svg || wanted !== figure.id) return
    const { run, frame } = store.now()
    figure.draw(svg, run, frame, { shape: 'narrow', prefix: `side-${figure.id}`, ...choices() })
    clearTimeout(pending)
    pending = setTimeout(() => {
      const now = store.now()
      const words = figure?.describe(now.run, now.frame) ?? ''
      svg?.setAttribute('aria-label', words)
      say(words)
    }, 500)
  }
  const ask = (): void => {
    if (waiting || wanted === null) return
    waiting = true
    requestAnimationFrame(draw)
  }
  const begin = async (id: string): Promise<void> => {
    const loaded = await loadFigure(id)
    if (wanted !== id) return
    figure = loaded
    const { width, height } = loaded.sizes.narrow
    svg = document.createElementNS(space, 'svg')
    svg.setAttribute('viewBox', `0 0 ${width} ${height}`)
    svg.setAttribute('role', 'img')
    svg.setAttribute('aria-label', loaded.title)
    svg.style.aspectRatio = `${width} / ${height}`
    place.replaceChildren(svg)
    draw()
  }
  store.subscribe(ask)
  return {
    show: (id) => {
      if (wanted === id) return
      wanted = id
      if (id === null) {
        figure = null
        place.replaceChildren()
      } else void begin(id)
    },
    redraw: ask,
  }
}
