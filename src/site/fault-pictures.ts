import { drawSceneLabels, labelsIn } from '../drawings/scene/draw-labels.ts'
import { type FaultScene, faultSceneOf } from '../drawings/scene/fault-scene.ts'
import { faultViewOf } from '../drawings/scene/fault-views.ts'
import { faultLayouts, faultRoom } from '../drawings/scene/layout.ts'
import { poseOf } from '../drawings/scene/machine/pose.ts'
import { drawSeen } from '../drawings/scene/draw-scene.ts'
import type { Shape } from '../drawings/shared/figure-contract.ts'
import { into } from '../drawings/shared/svg.ts'
import { exampleNeedle, exampleOf } from '../find/battery.ts'
import { base } from '../link/site-path.ts'
import { type FaultKindName, faultKindNames } from '../mechanism/fault-kinds.ts'
import { faultPhrase } from '../words/faults.ts'
import {
  brokenName,
  type CasePicture,
  describeFaultPicture,
  faultCaption,
  faultStandpoint,
} from '../words/figures/fault-scene.ts'
import { drawnMarkup } from './drawn-markup.ts'
import { faultSlug, faultState } from './faults.ts'
import { machineTrees } from '../drawings/scene/grown.ts'
import { machineInState } from './machine-state.ts'
import { partView, sceneStill } from './scene.ts'

/** Kinds that look like another one: what parts them is in the words. */
const sameAs: Partial<Record<FaultKindName, FaultKindName>> = {
  'card.reversed': 'card.locked',
  'pin.sticky': 'pin.low',
  'belt.timing': 'belt.off',
}

/** By which kind the picture of a kind is called. */
const nameOf = new Map<FaultKindName, FaultKindName>()

const taken = new Map<FaultKindName, FaultScene | null>()
const takenOf = (kind: FaultKindName): FaultScene | null => {
  const known = taken.get(kind)
  if (known !== undefined) return known
  const like = sameAs[kind] ?? kind
  const view = faultViewOf(like)
  const { run, frame } = machineInState(
    faultState(like, (way) => view?.at ?? exampleNeedle + way * (view?.past ?? 0)),
  )
  const now = faultSceneOf(machineTrees(), poseOf(run, frame), exampleOf(like))
  taken.set(kind, now)
  return now
}

/** The picture of a kind of fault as an SVG file with its styles in it, and `more` after them. */
export const faultFile = (kind: FaultKindName, more = ''): string => {
  const now = takenOf(kind)
  if (!now) throw new RangeError(`no picture of ${kind}`)
  const { scene, camera } = now
  return sceneStill(
    faultRoom,
    (group) => {
      drawSeen(group, scene, camera, faultRoom)
    },
    more,
  )
}

/** The pictures of faults, each by the kind that it is called by: kinds that look the same have one. */
export const faultFiles: ReadonlyMap<FaultKindName, string> = (() => {
  const drawn = new Map<string, FaultKindName>()
  for (const kind of faultKindNames.filter((each) => faultViewOf(each))) {
    const text = faultFile(kind)
    if (!drawn.has(text)) drawn.set(text, kind)
    nameOf.set(kind, drawn.get(text)!)
  }
  return new Map([...drawn].map(([text, kind]) => [kind, text]))
})()

/** The address of the picture of a kind, or of one that looks the same. */
const pictureAddress = (kind: FaultKindName): string =>
  `${base}/scene/faults/${faultSlug(nameOf.get(kind) ?? kind)}.svg`

/**
 * The pictures of all kinds of fault for a page that learns only in the browser what is broken: each one's address, the
 * fault in it in words, from where it is seen, and the view of the page of the parts in which it is seen.
 */
export const casePictures = (): Partial<Record<FaultKindName, CasePicture>> =>
  Object.fromEntries(
    faultKindNames.flatMap((kind) => {
      const now = takenOf(kind)
      if (!now) return []
      const picture: CasePicture = {
        address: pictureAddress(kind),
        example: faultPhrase(exampleOf(kind)),
        seen: faultStandpoint(now.view.place, now.view.view),
        view: partView(kind) ?? 'whole',
      }
      return [[kind, picture]]
    }),
  )

/** What a page shows of a kind's fault: the picture's address, its labels for a shape, and what it says; null without one. */
export const faultPicture = (
  kind: FaultKindName,
): {
  readonly address: string
  readonly labels: (shape: Shape) => string
  readonly caption: string
  readonly description: string
} | null => {
  const now = takenOf(kind)
  if (!now) return null
  const { view, broken, places } = now
  const fault = exampleOf(kind)
  const caption = faultCaption(fault, view.place, view.view)
  return {
    address: pictureAddress(kind),
    labels: (shape) =>
      drawnMarkup((svg) => {
        const layout = faultLayouts[shape]
        drawSceneLabels(into(svg), layout, labelsIn(layout, places), null, {
          name: broken,
          words: brokenName(fault),
        })
      }),
    caption,
    description: describeFaultPicture(
      caption,
      fault,
      broken,
      places.map(({ name }) => name),
    ),
  }
}
