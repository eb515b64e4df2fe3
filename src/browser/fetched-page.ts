/**
 * A page of the site, fetched and read without its styles: the policy of the page that reads it allows only its own.
 * Throws where it can't be fetched.
 */
export const fetchedPage = async (address: string): Promise<Document> => {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`${address}: ${answer.status}`)
  const html = (await answer.text()).replace(/<style>.*?<\/style>/gs, '')
  return new DOMParser().parseFromString(html, 'text/html')
}
