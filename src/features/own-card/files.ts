import { writeCardFile } from '../../link/card-file.ts'
import { quote } from '../../link/troubles.ts'
import { required } from '../../browser/dom.ts'
import type { Bench } from './card-bench.ts'
import { createPasteDialog } from './paste-dialog.ts'
import { createPictureDialog, type Opened } from './picture-dialog.ts'
import { fileName, saveFile } from '../../browser/save-file.ts'
import { cardPng } from './card-png.ts'
import { createSheetDialog } from './sheet-dialog.ts'

/** The largest text file that is read, in bytes: far more than a card's text takes. */
const mostBytes = 1_000_000

/** The largest picture file that is read, in bytes: more than a camera makes. */
const mostPictureBytes = 30_000_000

const about = 'Made on the workbench of Every Eighth Needle.'

/** Opens a file as a picture or a text, or says in one sentence why not. */
const openFile = async (
  file: File,
  bench: Bench,
  openText: (text: string) => void,
  openPicture: (file: File) => Promise<Opened>,
): Promise<void> => {
  const name = quote(file.name)
  if (file.type === 'image/svg+xml') {
    bench.tell(
      `${name} is a drawing made of shapes, and a small one can hold more than the memory does. Save it as a PNG picture and open that.`,
    )
    return
  }
  if (file.type.startsWith('image/')) {
    const opened = file.size > mostPictureBytes ? 'too large' : await openPicture(file)
    if (opened === 'too large')
      bench.tell(`${name} is too large a picture, so it was not opened. Make it smaller and try again.`)
    if (opened === 'unreadable') bench.tell(`${name} can’t be read as a picture by this browser.`)
    return
  }
  if (file.size > mostBytes) {
    bench.tell(`${name} is too large for a card’s text, so it was not opened.`)
    return
  }
  const text = await file.text().catch(() => null)
  if (text === null) bench.tell(`${name} can’t be read.`)
  else if (text.includes('\u0000')) bench.tell(`${name} is neither a text nor a picture.`)
  else openText(text)
}

/** Binds what brings cards in and takes them out: paste, open, save, and the sheet to punch. */
export const bindFiles = (editor: HTMLElement, bench: Bench): void => {
  const title = required(editor, '.own-title', HTMLInputElement)
  const titleNow = (): string => title.value.trim() || 'Own card'
  const onClick = (name: string, does: () => void): void => {
    required(editor, name, HTMLButtonElement).addEventListener('click', does)
  }
  for (const close of editor.querySelectorAll('.own-close'))
    close.addEventListener('click', () => {
      close.closest('dialog')?.close()
    })

  const openText = createPasteDialog(editor, bench, (words) => {
    title.value = words
  })
  onClick('.own-paste-open', () => {
    openText('')
  })
  const openPicture = createPictureDialog(editor, bench)
  const chooser = required(editor, '.own-file', HTMLInputElement)
  onClick('.own-open', () => {
    chooser.click()
  })
  chooser.addEventListener('change', () => {
    const file = chooser.files?.[0]
    if (file) void openFile(file, bench, openText, openPicture)
    // The same file may be opened again.
    chooser.value = ''
  })

  onClick('.own-save-text', () => {
    const rows = bench.card()
    if (!rows) return
    const name = fileName(titleNow(), 'card', 'txt')
    saveFile(name, new Blob([writeCardFile({ title: titleNow(), about, rows })], { type: 'text/plain' }))
    bench.tell(`Saved as ${name}. “Open a file” reads it again.`)
  })
  onClick('.own-save-picture', () => {
    const name = fileName(titleNow(), 'card', 'png')
    void cardPng(bench.card() ?? [0]).then((picture) => {
      if (picture) saveFile(name, picture)
      bench.tell(picture ? `Saved as ${name}.` : 'This browser can’t make the picture.')
    })
  })
  onClick('.own-sheet-open', createSheetDialog(editor, bench, titleNow))
}
