import {
  type PaperName,
  punchSheet,
  type SheetPage,
  type SheetSettings,
} from '../../drawings/punch-sheet/punch-sheet.ts'
import { required } from '../../browser/dom.ts'
import type { Bench } from './card-bench.ts'
import { fileName, saveFile } from '../../browser/save-file.ts'
import { sheetSvg } from '../../drawings/punch-sheet/sheet-svg.ts'

/** The dialog that shows and saves the sheet to punch. Its fields keep what was set while the page is open. */
export const createSheetDialog = (
  editor: HTMLElement,
  bench: Bench,
  titleNow: () => string,
): (() => void) => {
  const dialog = required(editor, '.own-sheet', HTMLDialogElement)
  const picture = required(dialog, '.own-page', HTMLImageElement)
  const said = required(dialog, '.own-count', HTMLElement)
  const back = required(dialog, '.own-page-back', HTMLButtonElement)
  const on = required(dialog, '.own-page-on', HTMLButtonElement)
  const pdf = required(dialog, '.own-pdf', HTMLButtonElement)
  const svg = required(dialog, '.own-svg', HTMLButtonElement)
  let pages: readonly SheetPage[] = []
  let page = 0

  const numberOf = (name: string): number => {
    const { value } = required(dialog, `input[name="${name}"]`, HTMLInputElement)
    return value.trim() === '' ? NaN : Number(value)
  }
  const settings = (): SheetSettings => ({
    columnPitch: numberOf('columnPitch'),
    rowPitch: numberOf('rowPitch'),
    margin: numberOf('margin'),
    overlap: numberOf('overlap'),
    paper: required(dialog, 'select[name="paper"]', HTMLSelectElement).value as PaperName,
  })
  const show = (): void => {
    const shown = pages[page]
    URL.revokeObjectURL(picture.src)
    picture.hidden = !shown
    if (shown) picture.src = URL.createObjectURL(new Blob([sheetSvg(shown)], { type: 'image/svg+xml' }))
    picture.alt = `Page ${page + 1} of the sheet to punch`
    back.disabled = page === 0
    on.disabled = page >= pages.length - 1
    pdf.disabled = svg.disabled = !shown
    if (shown) said.textContent = `Page ${page + 1} of ${pages.length}.`
  }
  const make = (): void => {
    const sheet = punchSheet(bench.card() ?? [0], settings(), titleNow())
    pages = sheet.pages ?? []
    page = Math.min(page, Math.max(0, pages.length - 1))
    if (!sheet.pages) said.textContent = sheet.reason
    show()
  }
  const turn = (by: number): void => {
    page += by
    show()
    // A button that can't be pressed again would drop the keyboard.
    if (back.disabled) on.focus()
    if (on.disabled) back.focus()
  }
  const savePdf = async (): Promise<void> => {
    said.textContent = 'Writing the pages.'
    try {
      const { sheetPdf } = await import('./sheet-pdf.ts')
      const bytes = await sheetPdf(pages, titleNow())
      saveFile(
        fileName(titleNow(), 'card', 'pdf'),
        new Blob([new Uint8Array(bytes)], { type: 'application/pdf' }),
      )
      said.textContent = `Saved: ${pages.length === 1 ? '1 page' : `${pages.length} pages`} as PDF. Print at true size.`
    } catch {
      said.textContent =
        'The part of this site that writes PDF did not arrive. Try again, or save each page as SVG.'
    }
  }
  dialog.addEventListener('input', make)
  back.addEventListener('click', () => {
    turn(-1)
  })
  on.addEventListener('click', () => {
    turn(1)
  })
  pdf.addEventListener('click', () => {
    void savePdf()
  })
  svg.addEventListener('click', () => {
    const shown = pages[page]
    if (!shown) return
    const name = fileName(pages.length === 1 ? titleNow() : `${titleNow()} ${page + 1}`, 'card', 'svg')
    saveFile(name, new Blob([sheetSvg(shown)], { type: 'image/svg+xml' }))
    said.textContent = `Saved: page ${page + 1} as SVG. Print at true size.`
  })
  return () => {
    page = 0
    make()
    dialog.showModal()
  }
}
