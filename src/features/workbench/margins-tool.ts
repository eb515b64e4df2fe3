import { chanceOfSelection } from '../../mechanism/chance.ts'
import type { Run } from '../../mechanism/pass.ts'
import type { Way } from '../../mechanism/bed.ts'
import { isChanceExact, type Trials, tryMachines } from '../../mechanism/trials.ts'
import { chanceVerdict, trialsWords, closedFormWords } from '../../words/selection-chance.ts'
import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { createSideFigure } from './side-figure.ts'
import type { Tool } from './tools.ts'

/** How many machines are tried, and for how long at a time, in ms, so that nothing stutters. */
const machines = 400
const slice = 6

/** How long after the last change machines are tried, in ms. */
const quiet = 250

/** The margins beside the machine, and the chance of selection: computed, and tried on machines from seeds. */
export const createMarginsTool = (panel: HTMLElement, store: MachineStore): Tool => {
  const exact = required(panel, '.chance-exact', HTMLElement)
  const tried = required(panel, '.chance-tried', HTMLElement)
  const words = required(panel, '.chance-words', HTMLElement)
  const figure = createSideFigure(required(panel, '.side-picture', HTMLElement), store)
  let isOpen = false
  let run: Run | null = null
  let way: Way | null = null
  let timer: ReturnType<typeof setTimeout> | undefined

  const finish = (trials: Trials, own: Run, ownWay: Way): void => {
    tried.textContent = trialsWords(trials)
    const chance = isChanceExact(own, ownWay) ? chanceOfSelection(own, ownWay) : null
    words.textContent = chanceVerdict(chance, trials)
  }
  const attempt = (trying: Generator<Trials, never>, own: Run, ownWay: Way): void => {
    if (run !== own || way !== ownWay || !isOpen) return
    const end = performance.now() + slice
    let trials = trying.next().value
    while (trials.machines < machines && performance.now() < end) trials = trying.next().value
    if (trials.machines >= machines) finish(trials, own, ownWay)
    else
      timer = setTimeout(() => {
        attempt(trying, own, ownWay)
      })
  }
  const begin = (): void => {
    const { run: now, frame } = store.now()
    if (!isOpen || (run === now && way === frame.pass.way)) return
    run = now
    way = frame.pass.way
    const ownWay = frame.pass.way
    exact.textContent = closedFormWords(isChanceExact(now, ownWay) ? chanceOfSelection(now, ownWay) : null)
    tried.textContent = '…'
    words.textContent = ''
    clearTimeout(timer)
    timer = setTimeout(() => {
      attempt(tryMachines(now, ownWay), now, ownWay)
    }, quiet)
  }
  store.subscribe(begin)
  return {
    open: () => {
      isOpen = true
      run = null
      figure.show('margins')
      begin()
    },
    close: () => {
      isOpen = false
      figure.show(null)
    },
  }
}
