import { encodeCard, rowText } from '../../link/card-text.ts'
import { testCardWords, progressWords } from '../../words/test-card.ts'
import { required, tell, dataOf } from '../../browser/dom.ts'
import type { CardAsk, CardFound, CardTold } from '../../find/test-card-messages.ts'

/** Seeds of cards: enough that nobody meets one twice by chance. */
const seeds = 100_000

/** Works out another test card when asked, tells how far it has come, and stops when asked. */
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
    tell(said, testCardWords(found))
    const rows = found.card.map((row, n) => `row ${n + 1}  ${rowText(row)}`)
    tell(required(result, '.card-rows', HTMLElement), rows.join('\n'))
    const link = (selector: string, address: string): void => {
      required(result, selector, HTMLAnchorElement).href = `${base}/${address}`
    }
    link('.card-workbench', `workbench/?beside=card#card=x.${encodeCard(found.card)}`)
    link('.card-note', `find/#${found.session}`)
    result.hidden = false
  }
  begin.addEventListener('click', () => {
    worker = new Worker(new URL('../../workers/test-card.ts', import.meta.url), { type: 'module' })
    worker.addEventListener('message', ({ data }: MessageEvent<CardTold>) => {
      if (data.kind === 'progress') {
        bar.max = data.progress.most
        bar.value = data.progress.classes
        tell(said, progressWords(data.progress))
        return
      }
      rest()
      show(data.found)
      begin.focus()
    })
    worker.addEventListener('error', () => {
      rest()
      tell(said, 'This browser can’t work a card out here. The one above does the same.')
    })
    bar.removeAttribute('value')
    begin.hidden = true
    bar.hidden = cancel.hidden = false
    cancel.focus()
    tell(said, 'The first cards are being tried.')
    worker.postMessage({ seed: 2 + Math.floor(Math.random() * seeds) } satisfies CardAsk)
  })
  cancel.addEventListener('click', () => {
    rest()
    tell(said, 'Stopped.')
    begin.focus()
  })
  root.setAttribute('data-live', '')
}
