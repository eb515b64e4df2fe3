import type { MeasurementName } from '../mechanism/measurement.ts'

interface MeasureGroup {
  readonly title: string
  /** What has to be open for it. */
  readonly lead: string
  /** Ids of the cautions that come before it. */
  readonly cautions: readonly string[]
  readonly names: readonly MeasurementName[]
}

/** The measurements by what has to be open for them, from the outside in. Every measurement is in one of them, by a test. */
export const measureGroups: readonly MeasureGroup[] = [
  {
    title: 'From outside',
    lead: 'Nothing is opened but the cover over the belt.',
    cautions: ['fingers', 'hooks'],
    names: ['needles', 'pitch', 'slack', 'timing'],
  },
  {
    title: 'The carriage, turned over',
    lead: 'Lift the carriage off the bed and lay it on its back on a cloth. Measure from a straight edge across its runners: where the tops of the butts stand at rest is your rest line.',
    cautions: ['force'],
    names: ['presserRight', 'presserLeft', 'gate1', 'gate2'],
  },
  {
    title: 'The bed, with its deck open',
    lead: 'Only if you can open and close it again. The carriage is off.',
    cautions: ['unplug', 'springs'],
    names: ['catchDepth', 'reach', 'shift', 'home'],
  },
  {
    title: 'The reader, where it is open already',
    lead: 'Never open the reader to measure. What you leave out here stays the training machine’s.',
    cautions: ['reader'],
    names: ['pinHigh', 'pinLow', 'sweepEdge', 'sweepThrow'],
  },
]
