/** Opens the answers on a handout, or folds them away, as the box over the sheets says. */
export const foldAnswers = (sheet: ParentNode): void => {
  const box = document.querySelector<HTMLInputElement>('.handout-answers input')
  for (const answer of sheet.querySelectorAll('details')) answer.open = box?.checked ?? false
}
