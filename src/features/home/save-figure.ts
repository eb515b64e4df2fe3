import { required, setText } from '../../browser/dom.ts'
import { bindSaveButton } from '../../browser/save-button.ts'

/** The button that saves the picture as it is now: what does it is fetched when it is pressed. */
export const bindSaving = (root: HTMLElement): void => {
  const words = (selector: string): string => required(root, selector, HTMLElement).textContent.trim()
  const save = async (): Promise<void> => {
    const { openSaving, seeCopy } = await import('../picture/index.ts')
    const svg = [...root.querySelectorAll<SVGSVGElement>('.home-drawing svg')].find((each) =>
      each.checkVisibility(),
    )
    if (!svg) throw new Error('the page shows no picture')
    const description = words('#home-figure-words')
    const title = words('#home-title')
    await openSaving(
      seeCopy(svg, { title, description, sentence: words('.home-said'), name: 'every eighth needle' }),
    )
  }
  bindSaveButton(root, save, (said) => {
    setText(required(root, '.home-said', HTMLElement), said)
  })
}
