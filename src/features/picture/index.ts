/** What others use to save pictures of figures. All of it comes only when somebody asks for a picture. */
export { openSaving } from './dialog.ts'
export { pictureOf } from './picture.ts'
export { seeCopy, seeMachine } from './seen.ts'
