import { type CardPaste, pasteCard } from '../../link/card-paste.ts'
import { andMore } from '../../link/troubles.ts'
import { element, required } from '../../browser/dom.ts'
import type { Bench } from './card-bench.ts'
import { showPreview } from './preview.ts'

/** The most sentences that are listed; the rest is counted. */
const mostListed = 12

const rowsText = (rows: number): string => (rows === 1 ? '1 row' : `${rows} rows`)

const countWords = ({ rows, problems, remarks }: CardPaste): string => {
  if (rows.length > 0) return `${rowsText(rows.length)} read.`
  return problems.length + remarks.length === 0 ? '' : 'No row could be read.'
}

const sentences = (all: readonly string[], look: string): HTMLElement[] => {
  const more = all.length - mostListed
  return [
    ...all.slice(0, mostListed).map((words) => element('li', { 'data-look': look }, [words])),
    ...(more > 0 ? [element('li', { 'data-look': look }, [andMore(more)])] : []),
  ]
}

/** The dialog that reads a card from text, and lists live what it can't read. Gives what opens it on a text. */
export const createPasteDialog = (
  editor: HTMLElement,
  bench: Bench,
  titled: (title: string) => void,
): ((text: string) => void) => {
  const dialog = required(editor, '.own-paste', HTMLDialogElement)
  const text = required(dialog, 'textarea', HTMLTextAreaElement)
  const count = required(dialog, '.own-count', HTMLElement)
  const list = required(dialog, '.own-problems', HTMLElement)
  const preview = required(dialog, '.own-preview', SVGSVGElement)
  const use = required(dialog, '.own-use', HTMLButtonElement)
  let reading = pasteCard('')
  const read = (): void => {
    reading = pasteCard(text.value)
    count.textContent = countWords(reading)
    list.replaceChildren(...sentences(reading.problems, 'left-out'), ...sentences(reading.remarks, 'remark'))
    showPreview(preview, reading.rows)
    use.disabled = reading.rows.length === 0
  }
  text.addEventListener('input', read)
  use.addEventListener('click', () => {
    dialog.close()
    if (reading.title !== null) titled(reading.title)
    const [problem = '', ...more] = reading.problems
    bench.use(
      reading.rows,
      [`The card of ${rowsText(reading.rows.length)} is in the reader.`, problem, andMore(more.length)]
        .filter((words) => words !== '')
        .join(' '),
    )
  })
  return (opened) => {
    text.value = opened
    read()
    dialog.showModal()
    text.focus()
  }
}
