import { libraryOf } from '../../browser/library.ts'
import { required, setText } from '../../browser/dom.ts'
import type { Hand } from '../../browser/scene/hand.ts'
import { draggedBy, nearerWay, travelSeconds, turnedBy, zoomedBy } from '../../browser/scene/turns.ts'
import { moveTo, prefersReducedMotion, stopMoving } from '../../browser/tween.ts'
import { readTree } from '../../drawings/scene/engine/tree-text.ts'
import type { View } from '../../drawings/scene/engine/camera.ts'
import type { ModelName } from '../../drawings/scene/machine/models.ts'
import { poseOf } from '../../drawings/scene/machine/pose.ts'
import { cameraFor } from '../../drawings/scene/cameras.ts'
import { partSeenAt } from '../../drawings/scene/sight.ts'
import { type Scene, sceneOf } from '../../drawings/scene/scene.ts'
import { sceneViews } from '../../drawings/scene/views.ts'
import { read } from '../../link/read.ts'
import { readView, writeView } from '../../link/scene-view.ts'
import { scenarioOf } from '../../link/state.ts'
import { frameAt } from '../../mechanism/frame.ts'
import { startRun } from '../../mechanism/pass.ts'
import { type SceneViewName, sceneViewNames, sceneWords } from '../../words/figures/scene.ts'
import { standpoint } from '../../words/figures/standpoint.ts'
import { faultPhrase } from '../../words/faults.ts'
import type { NumberedPart } from '../../words/numbered-parts.ts'
import { createMachineStage } from './stage.ts'

/** The machine that a hand turns. */
export interface Turner extends Hand {
  /** Goes to a view by its name. */
  readonly go: (name: string) => void
  /** Lights a part, or puts it out. */
  readonly light: (name: NumberedPart, isLit: boolean) => void
}

const isViewName = (name: string): name is SceneViewName => sceneViewNames.some((each) => each === name)

/** What the address says of the machine and of where it is seen from. */
const addressed = (bench: HTMLElement): { state: string; view: string | null; of: string } => {
  const keys = new URLSearchParams(location.hash.includes('=') ? location.hash.slice(1) : '')
  const view = keys.get('view')
  keys.delete('view')
  const state = keys.toString()
  return {
    state: state === '' ? (bench.dataset['state'] ?? '') : state,
    view,
    of: new URLSearchParams(location.search).get('of') ?? '',
  }
}

/** Makes the machine of the page turn. */
export const createTurner = (bench: HTMLElement): Turner => {
  const library = libraryOf(required(bench, '.library', HTMLScriptElement).text)
  const treeTexts = JSON.parse(required(bench, '.scene-trees', HTMLScriptElement).text) as Record<
    ModelName,
    string
  >
  const seen = JSON.parse(required(bench, '.scene-seen', HTMLScriptElement).text) as Record<
    string,
    NumberedPart[]
  >
  const { state: text, view: linked, of } = addressed(bench)
  const { state, troubles } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  const pose = poseOf(run, frameAt(run, state.pass, state.at))
  const stage = createMachineStage(bench)
  const scenes = new Map<SceneViewName, Scene>()
  const sceneNamed = (name: SceneViewName): Scene => {
    const found =
      scenes.get(name) ?? sceneOf(readTree(treeTexts[sceneViews[name].model]), pose, sceneViews[name])
    scenes.set(name, found)
    return found
  }

  let name: SceneViewName = 'front'
  let lit: NumberedPart | null = null
  const now = { ...sceneViews[name].view }
  let taken = { ...now }
  let isAsked = false

  const keepAddress = (): void => {
    const { view } = sceneViews[name]
    const isNamed = writeView(view) === writeView(now)
    const url = new URL(location.href)
    if (isNamed) url.searchParams.delete('of')
    else url.searchParams.set('of', name)
    const keys = new URLSearchParams(location.hash.includes('=') ? location.hash.slice(1) : '')
    keys.set('view', isNamed ? name : writeView(now))
    url.hash = keys.toString()
    history.replaceState(history.state, '', url)
  }
  const rest = (): void => {
    stage.rest(name, sceneNamed(name), now, lit)
    setText(required(bench, '.parts-title', HTMLElement), sceneWords[name].title)
    setText(required(bench, '.parts-standpoint', HTMLElement), standpoint(now))
    setText(required(bench, '.parts-shown', HTMLElement), sceneWords[name].shown)
    for (const button of bench.querySelectorAll('.parts-views button'))
      button.setAttribute('aria-pressed', String(button.getAttribute('data-view') === name))
    for (const item of bench.querySelectorAll<HTMLElement>('.parts-list > li'))
      item.toggleAttribute('data-seen', seen[name]?.some((each) => each === item.dataset['name']) ?? false)
    keepAddress()
  }
  const draw = (): void => {
    if (isAsked) return
    isAsked = true
    requestAnimationFrame(() => {
      isAsked = false
      if (stage.isTurning()) stage.turn(sceneNamed(name), now, lit)
    })
  }
  /** Travels to a place from which the machine is seen, by the shorter way round. */
  const travel = (to: View): void => {
    stopMoving(now)
    const arrive = (): void => {
      Object.assign(now, to)
      rest()
    }
    if (prefersReducedMotion()) {
      arrive()
      return
    }
    stage.begin(sceneNamed(name), now, lit)
    moveTo(now, {
      ...nearerWay(now, to),
      duration: travelSeconds,
      ease: 'power2.inOut',
      onUpdate: draw,
      onComplete: arrive,
    })
  }
  const go = (next: string): void => {
    if (!isViewName(next)) return
    if (next !== name) stage.clear()
    name = next
    travel({ ...sceneViews[next].view })
  }
  const choose = (part: NumberedPart): void => {
    const item = bench.querySelector<HTMLElement>(`.parts-list > li[data-name="${part}"]`)
    const details = item?.querySelector('details')
    if (!item || !details) return
    details.open = true
    item.scrollIntoView({ block: 'nearest', behavior: prefersReducedMotion() ? 'auto' : 'smooth' })
  }

  const follow = (): void => {
    const reading = linked === null ? null : readView(linked, sceneViewNames)
    const says = troubles.map(({ sentence }) => sentence)
    if (state.faults.length > 0) says.push(`Broken here: ${state.faults.map(faultPhrase).join(', ')}.`)
    if (isViewName(of)) name = of
    if (reading?.kind === 'named') name = reading.name
    Object.assign(now, reading?.kind === 'turned' ? reading.view : sceneViews[name].view)
    if (reading?.kind === 'refused') says.push(reading.reason)
    if (reading?.kind === 'turned' && reading.remark) says.push(reading.remark)
    setText(required(bench, '.link-note', HTMLElement), says.join(' '))
  }
  follow()
  rest()
  return {
    go,
    turn: (key) => {
      travel(turnedBy(now, key, sceneViews[name].view))
    },
    take: () => {
      stopMoving(now)
      taken = { ...now }
    },
    drag: (right, down) => {
      if (!stage.isTurning()) stage.begin(sceneNamed(name), now, lit)
      Object.assign(now, draggedBy(taken, right, down))
      draw()
    },
    zoom: (factor) => {
      if (!stage.isTurning()) stage.begin(sceneNamed(name), now, lit)
      Object.assign(now, zoomedBy(taken, factor))
      draw()
    },
    release: rest,
    press: (x, y, target) => {
      const label = target instanceof Element ? target.closest('.scene-label') : null
      const named = label?.getAttribute('data-name') as NumberedPart | null | undefined
      const scene = sceneNamed(name)
      const part = named ?? stage.at(x, y, partSeenAt(scene, cameraFor(scene, now)))
      if (part) choose(part)
    },
    light: (part, isLit) => {
      if (!isLit && lit !== part) return
      lit = isLit ? part : null
      const where = sceneViewNames.find((view) => seen[view]?.includes(part))
      if (isLit && where && !seen[name]?.includes(part)) go(where)
      else rest()
    },
  }
}
