import { required } from '../../browser/dom.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { FigureView } from './figure-view.ts'

/** The button that gives the code by which the figure shown is put into somebody’s own page; its dialog is fetched then. */
export const bindEmbedding = (root: HTMLElement, stage: FigureView, store: MachineStore): void => {
  required(root, '.embed-figure', HTMLButtonElement).addEventListener('click', () => {
    void import('./embed-dialog.ts').then(({ offerCode }) => {
      offerCode(root, stage, store)
    })
  })
}
