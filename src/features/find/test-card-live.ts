import { encodeCard, rowText } from '../../link/card-text.ts'
import { testCardWords, progressWords } from '../../words/test-card.ts'
import { required, setText, dataOf } from '../../browser/dom.ts'
import type { CardRequest, CardFound, CardMessage } from '../../find/test-card-messages.ts'

/** Seeds of cards: enough that nobody meets one twice by chance. */
const seeds = 100_000

/** Computes another test card when asked, shows how far it has come, and stops when asked. */
export const startTestCard = (root: HTMLElement): void => {
  const base = dataOf(root, 'base')
  const begin = required(root, '.card-another', HTMLButtonElement)
  const cancel = required(root, '.card-cancel', HTMLButtonElement)
  const bar = required(root, 'progress', HTMLProgressElement)
  const said = required(root, '.card-said', HTMLElement)
  const result = required(root, '.card-found', HTMLElement)
  let worker: Worker | null = null
  const rest = (): void => {
    worker?.terminate()
    worker = null
    bar.hidden = cancel.hidden = true
    begin.hidden = false
  }
  const show = (found: CardFound): void => {
    root.dataset.ms = String(Math.round(found.ms))
    setText(said, testCardWords(found))
    const rows = found.card.map((row, n) => `row ${n + 1}  ${rowText(row)}`)
    setText(required(result, '.card-rows', HTMLElement), rows.join('\n'))
    const link = (selector: string, address: string): void => {
      required(result, selector, HTMLAnchorElement).href = `${base}/${address}`
    }
    link('.card-workbench', `workbench/?beside=card#card=x.${encodeCard(found.card)}`)
    link('.card-note', `find/#${found.session}`)
    result.hidden = false
  }
  begin.addEventListener('click', () => {
    worker = new Worker(new URL('../../workers/test-card.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<CardMessage>) => {
      if (data.kind === 'progress') {
        bar.max = data.progress.most
        bar.value = data.progress.classes
        setText(said, progressWords(data.progress))
        return
      }
      rest()
      show(data.found)
      begin.focus()
    })
    worker.addEventListener('error', () => {
      rest()
      setText(said, 'This browser can’t compute a card here. The one above does the same.')
    })
    bar.removeAttribute('value')
    begin.hidden = true
    bar.hidden = cancel.hidden = false
    cancel.focus()
    setText(said, 'The first cards are being tried.')
    worker.postMessage({ seed: 2 + Math.floor(Math.random() * seeds) } satisfies CardRequest)
  })
  cancel.addEventListener('click', () => {
    rest()
    setText(said, 'Stopped.')
    begin.focus()
  })
  root.setAttribute('data-live', '')
}
