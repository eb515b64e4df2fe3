import { receiveTitle, sendTitle } from '../../browser/case-title.ts'
import { required } from '../../browser/dom.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { comeAlive, say, sayToo, startMachine } from '../machine/index.ts'
import { createCompareTool } from './compare-tool.ts'
import { createFabricTool } from './fabric-tool.ts'
import { createHistory } from './history.ts'
import { createMarginsTool } from './margins-tool.ts'
import { bindSettings } from './settings.ts'
import { createSideFigure } from './side-figure.ts'
import { bindTools, type Tool } from './tools.ts'
import type { MachineStore } from '../../browser/machine-store.ts'

const bindHelp = (root: HTMLElement): void => {
  const help = required(root, '.keys-help', HTMLDialogElement)
  required(root, '.keys', HTMLButtonElement).addEventListener('click', () => {
    help.showModal()
  })
  required(help, '.keys-close', HTMLButtonElement).addEventListener('click', () => {
    help.close()
  })
}

const bindHistory = (root: HTMLElement, store: MachineStore): void => {
  const undo = required(root, '.undo', HTMLButtonElement)
  const redo = required(root, '.redo', HTMLButtonElement)
  const history = createHistory(store, (canUndo, canRedo) => {
    const had = document.activeElement
    undo.disabled = !canUndo
    redo.disabled = !canRedo
    // A button that can't be pressed again would drop the keyboard.
    if (had === undo && !canUndo) redo.focus()
    if (had === redo && !canRedo) undo.focus()
  })
  const go = (isUndo: boolean): void => {
    if (isUndo ? undo.disabled : redo.disabled) return
    if (isUndo) history.undo()
    else history.redo()
    say(root, isUndo ? 'The last change is undone.' : 'The change is made again.')
  }
  undo.addEventListener('click', () => {
    go(true)
  })
  redo.addEventListener('click', () => {
    go(false)
  })
  addEventListener('keydown', (event) => {
    const isText =
      event.target instanceof HTMLTextAreaElement ||
      (event.target instanceof HTMLInputElement && /^(text|search|number)$/.test(event.target.type))
    if (isText || !(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key !== 'z' && key !== 'y') return
    event.preventDefault()
    go(key === 'z' && !event.shiftKey)
  })
}

/** The title of the case that this machine was brought from; empty for none. */
const titleOfCase = (): string => {
  const title = (history.state as Record<string, unknown> | null)?.['caseTitle']
  return typeof title === 'string' ? title : ''
}

/** Gives a case that is made again the title it had, which the browser's history carries over a reload. */
const bindCase = (root: HTMLElement): void => {
  const sent = receiveTitle()
  if (sent !== '') history.replaceState({ ...(history.state as object | null), caseTitle: sent }, '')
  const make = required(root, '.make-case', HTMLAnchorElement)
  make.addEventListener('click', () => {
    sendTitle(make.hash, titleOfCase())
  })
}

/** Any other figure of the site, beside the machine. */
const createFigureTool = (panel: HTMLElement, store: MachineStore): Tool => {
  const select = required(panel, '.figure-select', HTMLSelectElement)
  const said = required(panel, '.figure-said', HTMLElement)
  const figure = createSideFigure(
    required(panel, '.side-picture', HTMLElement),
    store,
    undefined,
    (words) => {
      said.textContent = words
    },
  )
  select.addEventListener('change', () => {
    said.textContent = ''
    figure.show(select.value)
  })
  return {
    open: () => {
      figure.show(select.value)
    },
    close: () => {
      figure.show(null)
    },
  }
}

/** The editor for a card of one's own, fetched when it is first opened. */
const createCardTool = (root: HTMLElement, panel: HTMLElement, store: MachineStore): Tool => {
  let editor: Promise<void> | null = null
  const start = async (): Promise<void> => {
    const { startCardEditor } = await import('../own-card/index.ts')
    startCardEditor(panel, store)
  }
  return {
    open: () => {
      editor ??= start().catch(() => {
        editor = null
        say(root, 'The editor could not be fetched. Close it and open it again once you are connected.')
      })
    },
    close: () => undefined,
  }
}

/** Begins a job with this machine; jobs are fetched when one is begun. */
const bindKeep = (root: HTMLElement, store: MachineStore): void => {
  const link = required(root, '.bench-keep', HTMLAnchorElement)
  link.addEventListener('click', (event) => {
    event.preventDefault()
    const keep = async (): Promise<void> => {
      const { keepAsJob } = await import('./keep-job.ts')
      const kept = await keepAsJob(store)
      if (kept.fragment === null) say(root, kept.words)
      else location.assign(link.href + kept.fragment)
    }
    keep().catch(() => {
      say(root, 'Jobs could not be fetched. Press again once you are connected.')
    })
  })
}

/** Brings the workbench to life. */
export const startWorkbench = async (root: HTMLElement): Promise<void> => {
  const machine = await startMachine(root)
  const { store, stage } = machine
  const panel = (id: string): HTMLElement => required(root, `#tool-${id}`, HTMLElement)
  bindHistory(root, store)
  bindSettings(root, store)
  bindCase(root)
  bindKeep(root, store)
  bindHelp(root)
  await yieldToBrowser()
  bindTools(
    required(root, '.side', HTMLElement),
    {
      fabric: createFabricTool(panel('fabric'), store),
      figure: createFigureTool(panel('figure'), store),
      compare: createCompareTool(panel('compare'), stage, store),
      margins: createMarginsTool(panel('margins'), store),
      card: createCardTool(root, panel('card'), store),
    },
    (words) => {
      sayToo(root, words)
    },
  )
  comeAlive(root)
}
