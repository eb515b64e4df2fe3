import type { MachineStore } from '../../browser/machine-store.ts'
import { bindSaveButton } from '../../browser/save-button.ts'
import { say } from './caption.ts'
import type { FigureView } from './figure-view.ts'

/** The button that saves the figure shown. */
export const bindSaving = (root: HTMLElement, stage: FigureView, store: MachineStore): void => {
  const save = async (): Promise<void> => {
    const { openSaving, seeMachine } = await import('../picture/index.ts')
    const { state } = store.now()
    const shown = { figure: stage.shown(), shape: stage.shape(), scene: stage.sceneSeen() }
    await openSaving(await seeMachine({ ...shown, state, library: store.library }))
  }
  bindSaveButton(root, save, (words) => {
    say(root, words)
  })
}
