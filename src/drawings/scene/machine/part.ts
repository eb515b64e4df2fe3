import type { PartId } from '../../../mechanism/part.ts'
import type { NumberedPart } from '../../../words/numbered-parts.ts'
import type { Material, Shape } from '../engine/piece.ts'

/** The assemblies and what can be taken off, by which a view says what it shows. */
export type Layer =
  | 'card'
  | 'feed'
  | 'sweep'
  | 'pins'
  | 'rockers'
  | 'frame'
  | 'cheek'
  | 'plate'
  | 'strips'
  | 'bed'
  | 'needles'
  | 'shanks'
  | 'retainer'
  | 'deck'
  | 'carriage'
  | 'belt'
  | 'cover'
  | 'cams'

/** How a piece is seen: as it is, moving because of a hole, or broken. */
export type Mood = 'plain' | 'moved' | 'broken'

/** A piece of the machine in one pose. */
export interface MachinePiece {
  readonly name: NumberedPart
  /** The part of the model that it belongs to, where the model has it. */
  readonly part: PartId | null
  readonly layer: Layer
  readonly material: Material
  readonly mood: Mood
  /** Null where the part has lost it. */
  readonly shape: Shape | null
  /** The column or needle by which some of its kind can be left out, from 1; null for what is there once. */
  readonly order: number | null
}

/** Makes pieces of one kind. */
export const pieceMaker =
  (
    name: NumberedPart,
    layer: Layer,
    material: Material,
    {
      part = null,
      mood = 'plain',
      order = null,
    }: Partial<Pick<MachinePiece, 'part' | 'mood' | 'order'>> = {},
  ) =>
  (shape: Shape | null): MachinePiece => ({ name, layer, material, part, mood, order, shape })
