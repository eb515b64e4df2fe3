import { frameAt } from '../../mechanism/frame.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import type { Tree } from './engine/tree.ts'
import { poseOf } from './machine/pose.ts'
import { type ModelName, modelNames } from './machine/models.ts'
import { treeOfMachine, type Trees } from './scene.ts'

/** Every hole there is, so that nothing which a card moves is left out. */
const allHoles = 0xff_ff_ff

const grown = new Map<ModelName, Tree>()

/** The tree of a model, which is the same for every state. Unless it was given, the first call takes half a second. */
export const machineTree = (model: ModelName = 'stretch'): Tree => {
  const known = grown.get(model)
  if (known !== undefined) return known
  const run = startRun(soundScenario([allHoles]))
  const found = treeOfMachine(poseOf(run, frameAt(run, 1, 109.8)), model)
  grown.set(model, found)
  return found
}

/** The trees of all models. */
export const machineTrees = (): Trees =>
  Object.fromEntries(modelNames.map((model) => [model, machineTree(model)])) as Record<ModelName, Tree>

/** Takes a tree of a model that was grown before, so that it need not be searched for. */
export const plantTree = (model: ModelName, tree: Tree): void => {
  if (!grown.has(model)) grown.set(model, tree)
}
