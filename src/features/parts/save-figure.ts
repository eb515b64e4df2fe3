import { required, setText } from '../../browser/dom.ts'
import { bindSaveButton } from '../../browser/save-button.ts'

/** The button that saves the machine as it is seen now; `load` fetches what draws it, and what saves it comes then. */
export const bindSaving = (bench: HTMLElement, load: () => Promise<unknown>): void => {
  const words = (selector: string): string => required(bench, selector, HTMLElement).textContent.trim()
  const save = async (): Promise<void> => {
    const [{ openSaving, seeCopy }] = await Promise.all([import('../picture/index.ts'), load()])
    const svg = [...bench.querySelectorAll<SVGSVGElement>('.scene-picture')].find((each) =>
      each.checkVisibility(),
    )
    if (!svg) throw new Error('the page shows no picture')
    const title = words('.parts-title')
    const description = svg.getAttribute('aria-label') ?? title
    const sentence = `${words('.parts-standpoint')} ${words('.parts-shown')}`
    await openSaving(seeCopy(svg, { title, description, sentence, name: title }))
  }
  bindSaveButton(bench, save, (said) => {
    setText(required(bench, '.link-note', HTMLElement), said)
  })
}
