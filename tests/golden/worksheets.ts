// Worksheets as they may have been handed out: the same name gives the same sheet for ever. Sheets are added here, never
// changed and never taken out.

/** A worksheet's name, and each of its tasks in words with its answer. */
export interface GoldenWorksheet {
  readonly name: string
  readonly tasks: readonly (readonly [prompt: string, answer: string])[]
}

export const goldenWorksheets: readonly GoldenWorksheet[] = [
  {
    name: '1',
    tasks: [
      ['R1 is on strip 1 and L1 is on strip 8. Which strip serves needle R75?', '3'],
      ['This card is a loop of 32 rows, and pass 1 read row 1. Which row does pass 107 read?', '11'],
      [
        'The machine is sound, and the card’s row has a single hole, in column 17. Which strip does it work? R1 is column 1. Which of the needles L24 to R24 come forward?',
        'L8 and R17',
      ],
      [
        'The machine is sound. Pass 8 goes to the left and reads card row 8. L48 is column 1. Which of the needles L48 to L33 come forward?',
        'L44, L43, L42, L41, L40, L38, L36, L35, L34 and L33',
      ],
      [
        'The carriage turned short of the mark before pass 5. Pass 1 read row 1. Which row does pass 12 read?',
        '11',
      ],
      [
        'Strip 1 is seized: it never shifts. Pass 24 reads card row 24. R1 is column 1. Which of the needles R73 to R96 come out wrong?',
        'R73 and R89',
      ],
      [
        'The carriage is set for two yarns: the second yarn knits at the selected needles and floats behind the plain ones. The row repeats all along the bed. How many plain needles does its longest float pass?',
        '4',
      ],
      [
        'Before pass 4 the carriage turned short of the mark. Everything else is sound. L24 is column 1. Which of the needles L24 to L9 come forward in pass 5?',
        'L23, L18, L17, L15, L14, L13, L11 and L10',
      ],
      [
        'The first turn is made at the right. Passes 1 to 6 read card rows 1, 2, 2, 3, 3, 4. What is wrong with the machine?',
        'Left pawl dead',
      ],
      ['This is what two passes left on the bed. What is wrong with the machine?', 'Strip 2 stuck shifted'],
      [
        'Strip 8 is seized and rocker 19 is broken. Pass 14 reads card row 14. L48 is column 1. Which of the needles L48 to L17 are missed?',
        'L41, L30, L25 and L17',
      ],
    ],
  },
  {
    name: '2',
    tasks: [
      ['R1 is column 1 and L1 is column 24. Which column of the card works needle L52?', '21'],
      ['This card is a loop of 32 rows, and pass 1 read row 1. Which row does pass 55 read?', '23'],
      [
        'The machine is sound, and the card’s row has a single hole, in column 16. Which strip does it work? R1 is column 1. Which of the needles L24 to R24 come forward?',
        'L9 and R16',
      ],
      [
        'The machine is sound. Pass 16 goes to the left and reads card row 16. L24 is column 1. Which of the needles L24 to L9 come forward?',
        'L24, L23, L22, L20, L19, L18, L15, L14, L13, L10 and L9',
      ],
      [
        'The carriage turned short of the mark before passes 2 and 11. Pass 1 read row 1. Which row does pass 16 read?',
        '14',
      ],
      [
        'Strip 2 is seized: it never shifts. Pass 4 reads card row 4. R1 is column 1. Which of the needles R49 to R72 come out wrong?',
        'R50 and R58',
      ],
      [
        'The carriage is set for two yarns: the second yarn knits at the selected needles and floats behind the plain ones. The row repeats all along the bed. How many plain needles does its longest float pass?',
        '10',
      ],
      [
        'Before pass 7 the carriage turned short of the mark. Everything else is sound. L72 is column 1. Which of the needles L72 to L57 come forward in pass 13?',
        'L70, L69, L68, L67, L65, L63, L62, L61, L59 and L57',
      ],
      [
        'The first turn is made at the right. Passes 1 to 6 read card rows 1, 2, 3, 4, 4, 5. What is wrong with the machine?',
        'Turned short before pass 5',
      ],
      [
        'This is what two passes left on the bed. What is wrong with the machine?',
        'Retainer bar worn, 12 ms',
      ],
      [
        'Strip 3 is seized and rocker 23 is broken. Pass 19 reads card row 19. R49 is column 1. Which of the needles R49 to R80 are missed?',
        'R51, R59, R67, R71 and R75',
      ],
    ],
  },
  {
    name: 'tuesday',
    tasks: [
      ['R1 is column 1 and L1 is column 24. Which column of the card works needle R48?', '24'],
      ['This card is a loop of 32 rows, and pass 1 read row 1. Which row does pass 112 read?', '16'],
      [
        'The machine is sound, and the card’s row has a single hole, in column 12. Which strip does it work? R1 is column 1. Which of the needles L24 to R24 come forward?',
        'L13 and R12',
      ],
      [
        'The machine is sound. Pass 29 goes to the right and reads card row 29. L72 is column 1. Which of the needles L72 to L57 come forward?',
        'L71, L68, L67, L66, L62, L58 and L57',
      ],
      [
        'The carriage turned short of the mark before passes 7 and 11. Pass 1 read row 1. Which row does pass 15 read?',
        '13',
      ],
      ['Pin 5 is stuck up. L24 is column 1. Which of the needles L24 to R8 come out wrong?', 'L20 and R5'],
      [
        'The carriage is set for two yarns: the second yarn knits at the selected needles and floats behind the plain ones. The row repeats all along the bed. How many plain needles does its longest float pass?',
        '6',
      ],
      [
        'Before pass 3 the carriage turned short of the mark. Everything else is sound. R49 is column 1. Which of the needles R49 to R64 come forward in pass 4?',
        'R51, R52, R53, R54, R55, R57, R59, R61, R63 and R64',
      ],
      [
        'The first turn is made at the right. Passes 1 to 6 read card rows 1, 1, 2, 2, 3, 3. What is wrong with the machine?',
        'Right pawl dead',
      ],
      ['This is what two passes left on the bed. What is wrong with the machine?', 'Pin 22 stuck up'],
      [
        'Strip 6 is seized and rocker 19 is broken. Pass 23 reads card row 23. L96 is column 1. Which of the needles L96 to L65 are missed?',
        'L91, L83, L78, L75 and L67',
      ],
    ],
  },
  {
    name: 'école 7',
    tasks: [
      ['R1 is on strip 1 and L1 is on strip 8. Which strip serves needle R74?', '2'],
      ['This card is a loop of 32 rows, and pass 1 read row 1. Which row does pass 119 read?', '23'],
      [
        'The machine is sound, and the card’s row has a single hole, in column 2. Which strip does it work? R1 is column 1. Which of the needles L24 to R24 come forward?',
        'L23 and R2',
      ],
      [
        'The machine is sound. Pass 21 goes to the right and reads card row 21. R73 is column 1. Which of the needles R73 to R88 come forward?',
        'R74, R75, R76, R81, R83 and R85',
      ],
      [
        'The carriage turned short of the mark before pass 2. Pass 1 read row 1. Which row does pass 8 read?',
        '7',
      ],
      ['Pin 1 is stuck down. R1 is column 1. Which of the needles R1 to R32 come out wrong?', 'R1 and R25'],
      [
        'The carriage is set for two yarns: the second yarn knits at the selected needles and floats behind the plain ones. The row repeats all along the bed. How many plain needles does its longest float pass?',
        '5',
      ],
      [
        'Before pass 3 the carriage turned short of the mark. Everything else is sound. R49 is column 1. Which of the needles R49 to R64 come forward in pass 8?',
        'R49, R50, R52, R53, R54, R55, R56, R58, R59, R60, R62, R63 and R64',
      ],
      [
        'The first turn is made at the right. Passes 1 to 6 read card rows 1, 1, 2, 2, 3, 3. What is wrong with the machine?',
        'Right pawl dead',
      ],
      ['This is what two passes left on the bed. What is wrong with the machine?', 'Strip 4 seized'],
      [
        'Strip 4 is seized and rocker 11 is broken. Pass 1 reads card row 1. L96 is column 1. Which of the needles L96 to L65 are missed?',
        'L93, L86, L85 and L69',
      ],
    ],
  },
]
