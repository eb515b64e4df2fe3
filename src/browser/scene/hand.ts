import { turnKeys, type TurnKey } from './turns.ts'

/** What a hand does with the machine. */
export interface Hand {
  readonly turn: (key: TurnKey) => void
  /** Takes hold of the machine, drags it by so many pixels from there, and lets go. */
  readonly take: () => void
  readonly drag: (right: number, down: number) => void
  readonly zoom: (factor: number) => void
  readonly release: () => void
  /** Presses what is at a point of the screen. */
  readonly press: (x: number, y: number, target: EventTarget | null) => void
}

/** How far a hand may move between press and release for a press, in pixels. */
const still = 5

/** A finger or the mouse on the machine. */
interface Held {
  readonly startX: number
  readonly startY: number
  x: number
  y: number
}

const apart = ([one, other]: readonly Held[]): number =>
  one && other ? Math.hypot(one.x - other.x, one.y - other.y) : 0

/** Follows hands that drag the machine, pinch it, or press a part of it; what they do is fetched when one comes. */
const followPointers = (stage: HTMLElement, load: () => Promise<Hand>): void => {
  const held = new Map<number, Held>()
  let isDragged = false
  let width = 0
  const act = (does: (hand: Hand) => void): void => void load().then(does)
  stage.addEventListener('pointerdown', (event) => {
    if (event.button !== 0 || held.size > 1) return
    const { clientX: x, clientY: y } = event
    held.set(event.pointerId, { startX: x, startY: y, x, y })
    isDragged = held.size > 1
    width = apart([...held.values()])
    act((hand) => {
      hand.take()
    })
  })
  stage.addEventListener('pointermove', (event) => {
    const finger = held.get(event.pointerId)
    if (!finger) return
    Object.assign(finger, { x: event.clientX, y: event.clientY })
    const [right, down] = [finger.x - finger.startX, finger.y - finger.startY]
    if (!isDragged && Math.hypot(right, down) < still) return
    if (!isDragged) stage.setPointerCapture(event.pointerId)
    isDragged = true
    const fingers = [...held.values()]
    if (fingers.length === 1)
      act((hand) => {
        hand.drag(right, down)
      })
    else {
      const now = apart(fingers)
      act((hand) => {
        hand.zoom(now / width)
      })
    }
  })
  for (const end of ['pointerup', 'pointercancel'] as const)
    stage.addEventListener(end, (event) => {
      if (!held.delete(event.pointerId) || held.size > 0) return
      const { clientX, clientY, target } = event
      if (isDragged)
        act((hand) => {
          hand.release()
        })
      else if (end === 'pointerup')
        act((hand) => {
          hand.press(clientX, clientY, target)
        })
    })
}

/**
 * Lets hands and keys turn what is on a stage: a drag turns it, two fingers and the wheel with a key zoom, the arrow keys
 * turn it while it has the focus, and a double press or Home brings it back.
 */
export const followHands = (stage: HTMLElement, load: () => Promise<Hand>): void => {
  const turn = (key: TurnKey): void =>
    void load().then((hand) => {
      hand.turn(key)
    })
  followPointers(stage, load)
  stage.addEventListener('keydown', (event) => {
    const key = turnKeys[event.key]
    if (!key || event.ctrlKey || event.metaKey || event.altKey) return
    event.preventDefault()
    turn(key)
  })
  stage.addEventListener('dblclick', () => {
    turn('back')
  })
  stage.addEventListener(
    'wheel',
    (event) => {
      if (!event.ctrlKey && !event.metaKey) return
      event.preventDefault()
      turn(event.deltaY < 0 ? 'in' : 'out')
    },
    { passive: false },
  )
}
