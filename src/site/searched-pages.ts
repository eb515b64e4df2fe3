/** A page that is no chapter, term or fault, as the search finds it; its address within the site. */
interface SearchedPage {
  readonly address: string
  readonly title: string
  readonly text: string
  readonly also: string
}

/** The pages that people look for by what they want to do. */
export const searchedPages: readonly SearchedPage[] = [
  {
    address: 'find/',
    title: 'Find the fault',
    text: 'Note which needles came out wrong, and see what may be wrong and what to check next.',
    also: 'diagnose, what is wrong with my machine, troubleshooting, practise finding faults',
  },
  {
    address: 'find/test-card/',
    title: 'The card that shows every fault',
    text: 'A card to punch that shows each single fault in a few passes.',
    also: 'test card, check a used machine',
  },
  {
    address: 'case/',
    title: 'A case for the owner',
    text: 'Show an owner what is broken, what it does to the knitting, how it is mended, and whether to knit on meanwhile.',
    also: 'customer, ladder, ladders, wrong stitches, explain a repair, knit plain meanwhile',
  },
  {
    address: 'workbench/',
    title: 'Workbench',
    text: 'Break any part, choose or draw a card, compare two machines, and see the fabric.',
    also: 'design a card, punch a card of my own, wear, margins',
  },
  {
    address: 'parts/',
    title: 'Find the parts on yours',
    text: 'The machine as a drawing that you turn in your hand: every part has a number, what it does and what goes wrong.',
    also: 'what is this part called, parts diagram, exploded view, card reader from below, carriage underneath, names of parts',
  },
  {
    address: 'measure/',
    title: 'Measure your own machine',
    text: 'Enter what you measured: which stage is near its end, what to set, and by how much.',
    also: 'calliper, adjust, adjustment, feeler gauge, presser height, gate height, clearance, own dimensions, set the presser',
  },
  {
    address: 'paper/',
    title: 'Paper',
    text: 'Fault chart, decision sheets, test card, check list, needle table, worksheets and handouts to print.',
    also: 'print, service check list, poster',
  },
  {
    address: 'teach/',
    title: 'For teachers',
    text: 'The mechanism taught in an hour or in a day: what to show, what to ask, which mistakes to expect.',
    also: 'lesson plan, class, projector, school',
  },
  {
    address: 'offline/',
    title: 'Without a network',
    text: 'Keep the whole site on this device, to read it where there is no network.',
    also: 'offline, download, install, USB stick',
  },
]
