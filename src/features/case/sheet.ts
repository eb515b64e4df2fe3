import { type Case, writeCase } from '../../link/case.ts'
import type { CardLibrary } from '../../link/state.ts'
import { avoid, keeping, meanwhile, repairs, repairTime } from '../../words/case.ts'
import { paceWords, sampleWords } from '../../words/case-fabric.ts'
import { pauseBriefly, yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { exampleNeedle } from '../../find/battery.ts'
import { required } from '../../browser/dom.ts'
import { setTextAt, showWrong } from './write-text.ts'
import { type CasePictures, casePicturesOf } from './pictures.ts'
import { onFirstAction, showCloseUp } from './close-up.ts'
import { showTurned } from './ways-to-turn.ts'
import { isSeen, type Piece, piecesOf, showFabricWords, showMachineWords } from './sheet-pictures.ts'

const showWords = (root: HTMLElement, shown: Case, look: CasePictures): void => {
  const { scenario } = look.run
  showWrong(root, shown, scenario)
  setTextAt(
    root,
    '.case-shows',
    [sampleWords(look.knitting, look.sample), paceWords[look.pace]].join(' ').trim(),
  )
  setTextAt(root, '.case-meanwhile', [meanwhile(scenario), avoid(scenario)].join(' ').trim())
  setTextAt(
    root,
    '.case-repairs',
    [...repairs(scenario), repairTime(scenario), keeping(scenario)].join(' ').trim(),
  )
  required(root, '.case-caution', HTMLElement).hidden = scenario.faults.length === 0 && scenario.wear === 0
}

/**
 * Makes what shows a case on the page, a piece at a time: what is seen, and once a reader does something, by and by, the
 * shapes for other widths and for paper. While a title or a note is typed, the machine and the fabric stay as they are.
 */
export const createSheet = (root: HTMLElement, library: CardLibrary): ((shown: Case) => Promise<void>) => {
  let asked: string | undefined
  let latest: Case | null = null
  let look: CasePictures | null = null
  let unseen: Piece[] = []
  const paper = matchMedia('print')
  let hasActed = paper.matches
  let drawExact = (): Promise<void> => Promise.resolve()
  const drawUnseen = async (drawn: CasePictures | null): Promise<void> => {
    while (unseen.length > 0) {
      // A phone that was turned shows some of them.
      await (unseen.some(isSeen) ? yieldToBrowser() : pauseBriefly())
      if (look !== drawn) return
      const next = unseen.find(isSeen) ?? unseen[0]
      unseen = unseen.filter((piece) => piece !== next)
      next?.draw()
    }
  }
  const drawAll = (): void => {
    hasActed = true
    for (const { draw } of unseen.splice(0)) draw()
  }
  onFirstAction(() => {
    hasActed = true
    void drawExact()
    void drawUnseen(look)
  })
  addEventListener('beforeprint', drawAll)
  paper.addEventListener('change', drawAll)
  return async (shown) => {
    const text = writeCase({ ...shown, title: '', done: '', state: { ...shown.state, note: '' } }, library)
    latest = shown
    if (text === asked) {
      if (look) showWords(root, shown, look)
      return
    }
    asked = text
    look = null
    const found = await casePicturesOf(shown, library)
    if (text !== asked) return
    look = found
    showWords(root, latest, found)
    await yieldToBrowser()
    const place = showCloseUp(root, latest.state, library)
    const { state } = latest
    showTurned(root, { ...state, at: exampleNeedle }, place?.view ?? 'whole', library)
    drawExact = async (): Promise<void> => {
      if (!place) return
      const { drawBrokenPart } = await import('./broken-part.ts')
      if (look === found) drawBrokenPart(root, state, place, library)
    }
    if (hasActed) void drawExact()
    showMachineWords(root, found)
    showFabricWords(root, found)
    const pieces = piecesOf(root, found)
    unseen = pieces.filter((piece) => !isSeen(piece))
    for (const { draw } of pieces.filter(isSeen)) {
      await yieldToBrowser()
      if (look !== found) return
      draw()
    }
    if (hasActed) void drawUnseen(found)
  }
}
