/** What is on paper: each part's address, its name, what it is, and where it begins in the class pack. */
export const paperParts = [
  {
    address: 'fault-chart',
    name: 'Fault chart',
    about: 'One sheet for the wall: what you see on the bed, what it may be, and the cheapest check.',
    anchor: 'fault-chart',
  },
  {
    address: 'nothing-selected',
    name: 'Nothing is selected: decide',
    about:
      'The commonest complaint, question by question: settings, card, belt, and only then what a cover hides.',
    anchor: 'nothing-selected',
  },
  {
    address: 'needle-table',
    name: 'Needle, column, strip',
    about: 'Every needle with its column of the card and its strip, and how to count on the left.',
    anchor: 'needle-table',
  },
  {
    address: 'catch-sheet',
    name: 'Catches by hand',
    about: 'A box for every catch of the bed: hold a strip over, press every butt down, and tick what stays.',
    anchor: 'catch-sheet',
  },
  {
    address: 'test-card',
    name: 'Test card to punch',
    about: 'The card that shows every fault, at true size, and a sheet on how to use it.',
    anchor: 'test-card',
  },
  {
    address: 'check-list',
    name: 'Service check list',
    about:
      'A service in the order of the bench: boxes to tick, cautions in their places, room for measurements.',
    anchor: 'check-list',
  },
  {
    address: 'parts',
    name: 'Find the parts on yours',
    about: 'The parts from the sides that you see at the bench, numbered, to lay beside a machine and tick.',
    anchor: 'parts',
  },
  {
    address: 'measure',
    name: 'Measure your own machine',
    about: 'A drawing and a blank for each measurement, to take to the machine.',
    anchor: 'measure',
  },
  {
    address: 'worksheets',
    name: 'Worksheet with answers',
    about:
      'Beds and cards to work out by hand. Another name gives another sheet; the answers have their own page.',
    anchor: 'worksheet',
  },
  {
    address: 'handouts',
    name: 'Chapter handouts',
    about: 'All chapters with a picture for each step and their questions, with or without the answers.',
    anchor: 'handout-01-the-whole-journey',
  },
] as const
