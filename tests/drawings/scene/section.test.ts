import { expect, test } from 'vitest'
import { cameraFor, machineRooms } from '@/drawings/scene/cameras.ts'
import { visibleIn } from '@/drawings/scene/engine/visible.ts'
import { drawnOf, sceneOf } from '@/drawings/scene/scene.ts'
import { sceneViews } from '@/drawings/scene/views.ts'
import { camIds, camMiddle } from '@/drawings/shared/cams.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { poseAt, trees } from './machines.ts'

/** The needle at which the bed is cut. */
const cutAt = 110

test.each(camIds.flatMap((cam) => [1, 2].map((pass) => [cam, pass] as const)))(
  'the %s is cut, and seen cut, where the needle in section is under it in pass %i',
  (cam, pass) => {
    const view = sceneViews.across
    const cutsOf = (x: number): string[] => {
      const scene = sceneOf(trees.stretch, poseAt(pass, x), view)
      const camera = cameraFor(scene, view.view)
      const drawn = drawnOf(scene, camera)
      const visible = visibleIn(camera, drawn, machineRooms.flat)
      return drawn
        .filter((each) => visible.has(each))
        .filter(({ shape }) => shape.kind === 'hull' && shape.faces.some(({ kind }) => kind === 'cut'))
        .map(({ piece }) => scene.pieces[piece]!.name)
    }
    const way = pass === 1 ? 1 : -1
    expect(cutsOf(cutAt + way * camMiddle(dimensions, cam))).toContain(cam)
    expect(cutsOf(cutAt - way * 12)).not.toContain(cam)
  },
)
