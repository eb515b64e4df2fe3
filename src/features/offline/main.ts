import { required, setText } from '../../browser/dom.ts'
import type { Answer, Kept, Trouble, Wish } from '../../workers/offline-messages.ts'
import { canKeep, registered, registerNow } from './register.ts'

const troubleWords: Readonly<Record<Trouble, string>> = {
  full: 'There is no room left for the rest of it: make some, then press again.',
  unreached:
    'Not all of it could be fetched. Perhaps the network went, or the site has a newer version by now: open this page again and press once more.',
}

const noWorker =
  'This browser keeps nothing here. It may be a private window, there may be no room left, or the site came without https. It works as long as there is a network.'

const fromFiles =
  'You have opened the site from files on this device, so all of it is here and needs no network.'

/** A size in MB, or in kB where it is small. */
const sizeWords = (bytes: number): string =>
  bytes < 1e6 ? `${Math.round(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`

const keepingWords = 'Keeping the whole site. Leave this page open until it is done.'

const keptWords = ({ files, bytes, allFiles, allBytes }: Kept): string =>
  files === allFiles
    ? `The whole site is kept on this device: ${allFiles} files, ${sizeWords(allBytes)}.`
    : `Kept on this device: ${sizeWords(bytes)} of ${sizeWords(allBytes)}, ${files} of ${allFiles} files. That is what every page needs, and the pages you have opened.`

/** Asks the worker, and hears its answers to the last. */
const ask = (worker: ServiceWorker, wish: Wish, hear: (answer: Answer) => void): void => {
  const { port1, port2 } = new MessageChannel()
  port1.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    hear(data)
    if (data.isDone) port1.close()
  })
  port1.start()
  worker.postMessage(wish, [port2])
}

/** The worker once it can keep things. Null where the browser has none, or could not set it up. */
const ready = async (): Promise<ServiceWorker | null> => {
  registerNow()
  const registration = await registered
  if (!registration) return null
  const { active, installing } = registration
  if (active) return active
  const ended = new Promise<null>((done) => {
    installing?.addEventListener('statechange', () => {
      if (installing.state === 'redundant') done(null)
    })
  })
  return Promise.race([ended, navigator.serviceWorker.ready.then(({ active: worker }) => worker)])
}

/** Asks the browser to keep what is here even when room is short, and gives the words for its answer. */
const lastingWords = async (): Promise<string> => {
  const isLasting = await navigator.storage.persist().catch(() => false)
  return isLasting ? '' : ' The browser may clear it away if the device runs short of room.'
}

/** Brings the box to life that shows what is kept, and with which the reader keeps or removes it. */
export const startKeeping = async (root: HTMLElement): Promise<void> => {
  const state = required(root, '.keeping-state', HTMLElement)
  const keep = required(root, '.keeping-keep', HTMLButtonElement)
  const remove = required(root, '.keeping-remove', HTMLButtonElement)
  const progress = required(root, 'progress', HTMLProgressElement)
  const soFar = required(root, '.keeping-so-far', HTMLElement)

  const worker = canKeep ? await ready() : null
  if (!worker) {
    setText(state, location.protocol === 'file:' ? fromFiles : noWorker)
    return
  }

  const render = ({ kept, isDone, trouble }: Answer, more = ''): void => {
    const missing = kept.allBytes - kept.bytes
    setText(
      state,
      isDone ? `${keptWords(kept)}${trouble ? ` ${troubleWords[trouble]}` : ''}${more}` : keepingWords,
    )
    setText(soFar, isDone ? '' : `${sizeWords(kept.bytes)} of ${sizeWords(kept.allBytes)}`)
    setText(keep, `Keep the whole site on this device (${sizeWords(missing)} more)`)
    keep.hidden = missing === 0
    remove.hidden = kept.chosenFiles === 0
    keep.disabled = remove.disabled = !isDone
    progress.hidden = isDone
    progress.max = kept.allBytes
    progress.value = kept.bytes
  }
  const keepOn = (lasting: Promise<string>, before: number): void => {
    ask(worker, { kind: 'keep' }, (answer) => {
      const { kept, isDone, trouble } = answer
      const isWhole = kept.files === kept.allFiles
      // A portion that brought nothing would bring nothing again.
      const goesOn = isDone && !trouble && !isWhole && kept.files > before
      render({ ...answer, isDone: isDone && !goesOn })
      if (goesOn) keepOn(lasting, kept.files)
      else if (isDone && isWhole) void lasting.then((words) => render(answer, words))
    })
  }
  keep.addEventListener('click', () => {
    keep.disabled = true
    keepOn(lastingWords(), 0)
  })
  remove.addEventListener('click', () => {
    ask(worker, { kind: 'remove' }, (answer) =>
      render(
        answer,
        ' The pages you had kept are removed. The rest goes with the browser’s data for this site.',
      ),
    )
  })
  ask(worker, { kind: 'tell' }, render)
}
