import { clothOf, clothSize, drawCloth } from '../../drawings/cloth/cloth.ts'
import { floatLength, floatLimit } from '../../mechanism/fabric.ts'
import { withinPass } from '../../mechanism/bed.ts'
import type { Run } from '../../mechanism/pass.ts'
import { knittedWords, floatsCounted, floatWords } from '../../words/knitted-rows.ts'
import { element, required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { createSideFigure } from './side-figure.ts'
import type { Tool } from './tools.ts'

/** How many long floats are listed, the longest first. */
const listed = 6

/** The fabric as it grows: the rows near the carriage, the whole cloth, and the floats over a limit that is chosen. */
export const createFabricTool = (panel: HTMLElement, store: MachineStore): Tool => {
  const input = required(panel, '.float-limit', HTMLInputElement)
  const place = required(panel, '.cloth', HTMLElement)
  const words = required(panel, '.cloth-words', HTMLElement)
  const list = required(panel, '.float-list', HTMLUListElement)
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
  svg.style.aspectRatio = `${clothSize.width} / ${clothSize.height}`
  svg.setAttribute('role', 'img')
  place.append(svg)
  let isOpen = false
  let limit = floatLimit
  /** What the cloth was last drawn of. */
  let drawn: { run: Run; pass: number; limit: number } | null = null
  const figure = createSideFigure(required(panel, '.side-picture', HTMLElement), store, () => ({
    floatLimit: limit,
  }))

  const draw = (): void => {
    const { run, state } = store.now()
    if (!isOpen || (drawn?.run === run && drawn.pass === state.pass && drawn.limit === limit)) return
    drawn = { run, pass: state.pass, limit }
    const cloth = clothOf(run, state.pass, limit)
    // Before a second pass its words alone say that nothing is knitted.
    place.hidden = cloth.rows.length === 0
    drawCloth(svg, cloth, run.condition.bed)
    words.textContent = knittedWords(cloth.rows)
    svg.setAttribute(
      'aria-label',
      `The whole fabric, as it comes out and as it should be. ${words.textContent}`,
    )
    const floats = cloth.rows
      .flatMap((row) => row.floats.map((float) => ({ pass: row.pass, float })))
      .sort((one, other) => floatLength(other.float) - floatLength(one.float))
    list.replaceChildren(
      element('li', { class: 'float-count' }, [floatsCounted(floats.length, limit)]),
      ...floats.slice(0, listed).map(({ pass, float }) => {
        const button = element('button', { type: 'button', class: 'float-go' }, [floatWords(pass, float)])
        button.addEventListener('click', () => {
          const middle = (float.first + float.last) / 2
          store.set({ pass, at: withinPass(middle, pass, store.now().state.bed) })
        })
        return element('li', {}, [button])
      }),
    )
  }
  input.addEventListener('input', () => {
    const value = Number(input.value)
    const isFit = input.value !== '' && Number.isInteger(value) && value >= 1 && value <= 199
    input.setAttribute('aria-invalid', String(!isFit))
    if (!isFit) return
    limit = value
    figure.redraw()
    draw()
  })
  store.subscribe(draw)
  return {
    open: () => {
      isOpen = true
      figure.show('fabric')
      draw()
    },
    close: () => {
      isOpen = false
      figure.show(null)
    },
  }
}
