import { mapNeedle } from '../../drawings/chain/map-band.ts'
import { carriageHalf, needleX } from '../../drawings/chain/layout.ts'
import { passEnds } from '../../mechanism/bed.ts'
import { placeIn } from '../../browser/pointer.ts'
import type { FigureView } from './figure-view.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { slideTo } from './slide-carriage.ts'

/** How near to the window's edge, in needles, a held carriage makes the bed run on, and how fast, needles a second. */
const edge = 5
const runOn = 30

/** Lets a hand drag the carriage along the bed in the drawing, and jump anywhere by the map below it. */
export const dragCarriage = (stage: FigureView, store: MachineStore): void => {
  let grip: { offset: number; pointer: number; first: number; last: number } | null = null
  let timer = 0

  const isOnMap = (y: number): boolean => y > stage.layout().map - 10
  const isOnCarriage = (x: number, y: number): boolean => {
    const layout = stage.layout()
    const middle = needleX(layout, stage.from(), store.now().state.at)
    return (
      y > layout.buttTop - 28 && y < layout.hook + 32 && Math.abs(x - middle) < carriageHalf * layout.pitch
    )
  }
  const jump = (x: number): void => {
    const { state } = store.now()
    const { start, end } = passEnds(state.pass, state.bed)
    const [left, right] = [Math.min(start, end), Math.max(start, end)]
    // A jump never turns the machine: it stops a hair short of the mark.
    const at = Math.min(right, Math.max(left, Math.round(mapNeedle(stage.layout(), x) * 4) / 4))
    store.set({ at: at === end ? end - store.now().frame.pass.way * 0.25 : at })
  }
  const drag = (x: number): void => {
    if (!grip) return
    const layout = stage.layout()
    grip.last = x
    const step = slideTo(store, stage.from() + (x - layout.left) / layout.pitch - grip.offset)
    if (step.turned) grip.offset = stage.from() + (x - layout.left) / layout.pitch - step.at
  }
  const run = (time: number, before: number): void => {
    if (!grip) return
    const layout = stage.layout()
    const needles = layout.needles
    const at = (grip.last - layout.left) / layout.pitch
    const beyond = at < edge ? at - edge : at > needles - edge ? at - needles + edge : 0
    // A hand that took hold near the edge, and has not moved towards it, stays where it is.
    const moved = (grip.last - grip.first) / layout.pitch
    if (beyond !== 0 && Math.abs(moved) > 1 && Math.sign(moved) === Math.sign(beyond)) {
      const share = Math.max(-1, Math.min(1, beyond / edge))
      stage.holdWindow(stage.from() + share * runOn * Math.min(0.05, (time - before) / 1000))
      drag(grip.last)
    }
    timer = requestAnimationFrame((next) => {
      run(next, time)
    })
  }
  const release = (): void => {
    if (!grip) return
    cancelAnimationFrame(timer)
    grip = null
    stage.root.removeAttribute('data-dragging')
    stage.holdWindow(null)
  }

  for (const svg of stage.root.querySelectorAll<SVGSVGElement>('[data-figure="chain"] svg')) {
    svg.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return
      const { x, y } = placeIn(svg, event)
      const layout = stage.layout()
      if (isOnMap(y)) {
        svg.setPointerCapture(event.pointerId)
        grip = null
        jump(x)
        const move = (next: PointerEvent): void => {
          jump(placeIn(svg, next).x)
        }
        svg.addEventListener('pointermove', move)
        svg.addEventListener(
          'pointerup',
          () => {
            svg.removeEventListener('pointermove', move)
          },
          { once: true },
        )
        svg.addEventListener(
          'pointercancel',
          () => {
            svg.removeEventListener('pointermove', move)
          },
          { once: true },
        )
        return
      }
      if (!isOnCarriage(x, y)) return
      svg.setPointerCapture(event.pointerId)
      stage.holdWindow(stage.from())
      stage.root.setAttribute('data-dragging', 'carriage')
      grip = {
        offset: stage.from() + (x - layout.left) / layout.pitch - store.now().state.at,
        pointer: event.pointerId,
        first: x,
        last: x,
      }
      timer = requestAnimationFrame((time) => {
        run(time, time)
      })
    })
    svg.addEventListener('pointermove', (event) => {
      if (grip?.pointer === event.pointerId) drag(placeIn(svg, event).x)
    })
    svg.addEventListener('pointerup', release)
    svg.addEventListener('pointercancel', release)
  }
}
