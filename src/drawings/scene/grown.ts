import { frameAt } from '../../mechanism/frame.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import type { Tree } from './engine/tree.ts'
import { poseOf } from './machine/pose.ts'
import { treeOfMachine } from './scene.ts'

/** Every hole there is, so that nothing which a card moves is left out. */
const allHoles = 0xff_ff_ff

let grown: Tree | undefined

/** The machine's tree, which is the same for every state. Unless it was given, the first call takes half a second. */
export const machineTree = (): Tree => {
  if (grown === undefined) {
    const run = startRun(soundScenario([allHoles]))
    grown = treeOfMachine(poseOf(run, frameAt(run, 1, 109.8)))
  }
  return grown
}

/** Takes a tree that was grown before, so that it need not be searched for. */
export const plantTree = (tree: Tree): void => {
  grown ??= tree
}
