import { withStep } from '../../lesson/progress.ts'
import { changeProgress } from './progress-storage.ts'

/** Keeps which steps of a chapter have been seen, from the event that the chapter sends for each. */
export const keepSteps = (chapter: number, root: HTMLElement): void => {
  const keep = (step: string): void => {
    changeProgress((progress) => withStep(progress, chapter, step))
  }
  root.addEventListener('step', (event) => {
    if (event instanceof CustomEvent) keep((event.detail as { id: string }).id)
  })
  const current = root.querySelector('.step[data-current]')
  if (current) keep(current.id)
}
