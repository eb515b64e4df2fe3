import { mapNeedle } from '../../drawings/chain/map-band.ts'
import { needleX } from '../../drawings/chain/layout.ts'
import { carriageHalf } from '../../drawings/shared/cams.ts'
import { passEnds } from '../../mechanism/bed.ts'
import { type Drag, followDrags } from '../../browser/pointer.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import type { FigureView } from './figure-view.ts'
import { slideTo } from './slide-carriage.ts'

/** How near to the window's edge, in needles, a held carriage makes the bed run on, and how fast, needles a second. */
const edge = 5
const runOn = 30

/** The longest time between two pictures of the screen that the bed runs on for, in s: a stalled page does not leap. */
const longestStep = 0.05

const isOnMap = (view: FigureView, y: number): boolean => y > view.layout().map - 10

const isOnCarriage = (view: FigureView, store: MachineStore, x: number, y: number): boolean => {
  const layout = view.layout()
  const middle = needleX(layout, view.from(), store.now().state.at)
  return y > layout.buttTop - 28 && y < layout.hook + 32 && Math.abs(x - middle) < carriageHalf * layout.pitch
}

/** Moves the carriage to where the map of the whole bed is pressed. It never turns the machine. */
const jumpOnMap = (view: FigureView, store: MachineStore, x: number): void => {
  const { state, frame } = store.now()
  const { start, end } = passEnds(state.pass, state.bed)
  const [left, right] = [Math.min(start, end), Math.max(start, end)]
  const at = Math.min(right, Math.max(left, Math.round(mapNeedle(view.layout(), x, view.whole()) * 4) / 4))
  // It stops a hair short of the turn mark.
  store.set({ at: at === end ? end - frame.pass.way * 0.25 : at })
}

/** How fast the bed runs on under a carriage held at `x`, as a share of the full speed from -1 to 1; `first` is where it was taken. */
const runOnShare = (view: FigureView, x: number, first: number): number => {
  const { left, pitch, needles } = view.layout()
  const at = (x - left) / pitch
  const beyond = at < edge ? at - edge : at > needles - edge ? at - needles + edge : 0
  // A hand that took hold near the edge, and has not moved towards it, stays where it is.
  const moved = (x - first) / pitch
  const isTowards = Math.abs(moved) > 1 && Math.sign(moved) === Math.sign(beyond)
  return isTowards ? Math.max(-1, Math.min(1, beyond / edge)) : 0
}

/** Takes hold of the carriage at `first`: it goes with the hand, and near the window's edge the bed runs on. */
const holdCarriage = (view: FigureView, store: MachineStore, first: number): Drag => {
  const needleAt = (x: number): number => view.from() + (x - view.layout().left) / view.layout().pitch
  let offset = needleAt(first) - store.now().state.at
  let last = first
  let timer = 0
  const move = (x: number): void => {
    last = x
    const step = slideTo(store, needleAt(x) - offset)
    if (step.turned) offset = needleAt(x) - step.at
  }
  const run = (time: number, before: number): void => {
    const share = runOnShare(view, last, first)
    if (share !== 0) {
      view.holdWindow(view.from() + share * runOn * Math.min(longestStep, (time - before) / 1000))
      move(last)
    }
    timer = requestAnimationFrame((next) => {
      run(next, time)
    })
  }
  view.holdWindow(view.from())
  view.root.setAttribute('data-dragging', 'carriage')
  timer = requestAnimationFrame((time) => {
    run(time, time)
  })
  return {
    move,
    end: () => {
      cancelAnimationFrame(timer)
      view.root.removeAttribute('data-dragging')
      view.holdWindow(null)
    },
  }
}

/** Lets a hand drag the carriage along the bed in the drawing, and jump anywhere by the map below it. */
export const dragInChain = (view: FigureView, store: MachineStore): void => {
  const jump = (x: number): void => {
    jumpOnMap(view, store, x)
  }
  for (const svg of view.root.querySelectorAll<SVGSVGElement>('[data-figure="chain"] svg'))
    followDrags(svg, (x, y) => {
      if (isOnMap(view, y)) {
        jump(x)
        return { move: jump }
      }
      return isOnCarriage(view, store, x, y) ? holdCarriage(view, store, x) : null
    })
}
