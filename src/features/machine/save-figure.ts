import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { say } from './caption.ts'
import type { FigureView } from './figure-view.ts'

/** The button that saves the figure shown: what does it is fetched when it is pressed. */
export const bindSaving = (root: HTMLElement, stage: FigureView, store: MachineStore): void => {
  const save = async (): Promise<void> => {
    const { openSaving, seeMachine } = await import('../picture/index.ts')
    const { state } = store.now()
    const shown = { figure: stage.shown(), shape: stage.shape(), scene: stage.sceneSeen() }
    await openSaving(await seeMachine({ ...shown, state, library: store.library }))
  }
  required(root, '.save-figure', HTMLButtonElement).addEventListener('click', () => {
    save().catch(() => {
      say(root, 'The part of this site that saves pictures did not arrive. Try again.')
    })
  })
}
