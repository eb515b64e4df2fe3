import { change, load, type Section } from './storage.ts'

/** Whether finished jobs weigh what is likely, on the page of jobs and where faults are found: off until it is switched on. */
const stored: Section<boolean> = {
  read: ({ ownExperience }) => ownExperience === true,
  write: (ownExperience) => ({ ownExperience }),
}

export const countsExperience = (): boolean => load(stored)

/** Switches it; false where the browser does not keep it, so that it lasts as long as the page. */
export const countExperience = (isOn: boolean): boolean => change(stored, () => isOn)
