/*
 * The words of the trade that the page uses, each in two lines with where that comes from. One
 * table; the marks beside the
 * words name their line of it by the word itself.
 */

interface HelpLine {
  readonly words: string
  /** Where it comes from, or that it comes from nowhere. */
  readonly source: string
}

const COMMON = 'common practice, no source'

export const HELP_WORDS = {
  wall: {
    words:
      'A line of plastic laid along the outline, round and round. Several beside each other make a wall.',
    source: COMMON,
  },
  skin: {
    words: 'Solid layers that close a part above and below, wherever it begins, ends or steps.',
    source: COMMON,
  },
  infill: {
    words:
      'The pattern between walls and skins, as a share of solid: 0 % leaves it hollow, 100 % fills it.',
    source: COMMON,
  },
  layer: {
    words:
      'How high one pass of the nozzle is. At most 0.8 of the line’s width, or it is hardly pressed on.',
    source: COMMON,
  },
  'first layer': {
    words: 'The layer on the bed, often laid higher and wider than the others so that it sticks.',
    source: COMMON,
  },
  line: {
    words: 'How wide one laid line is, usually a little wider than the nozzle’s hole.',
    source: COMMON,
  },
  support: {
    words: 'Loose columns under what hangs over, broken off afterwards: paid for, not flown.',
    source: COMMON,
  },
  brim: {
    words:
      'Flat lines round a part, one layer high, that hold it to the bed. Taken off: paid for, not flown.',
    source: COMMON,
  },
  strand: {
    words:
      'A round line laid over air or an open room. Nothing presses it flat, so it takes more plastic.',
    source: `${COMMON}; how much more is one of the printer’s habits, held against real toolpaths`,
  },
  'gap line': {
    words:
      'A line for what is left between walls, too narrow for a full one. Some printers leave it open.',
    source: `${COMMON}; one of the printer’s habits, held against real toolpaths`,
  },
  hold: {
    words:
      'A skin goes on past the walls and into the room inside, to have something to hold on to.',
    source: `${COMMON}; one of the printer’s habits, held against real toolpaths`,
  },
  bead: {
    words:
      'A laid line in section, round at its sides. Channels stay open between lines: a print is lighter than solid.',
    source: 'void channels seen in section: doi 10.1007/s00170-019-04081-7',
  },
  range: {
    words:
      'Where the figure lies 19 times in 20; on the ruler the pale band. Weighing a part makes it narrower.',
    source:
      'two deviations of our model of named errors (JCGM 100:2008, 6.3.3); ' +
      'its middle from 16 weighed parts of the Open Dynamic Robot Initiative ' +
      '(open_robot_actuator_hardware, 66af1522)',
  },
  odds: {
    words:
      'The chance to end below a line, from the ranges of all that is on board. What is forgotten is not in it.',
    source: 'errors added as in JCGM 100:2008 (GUM), clause 5; clause from memory',
  },
  growth: {
    words:
      'What aircraft gain between the list and the scale: glue, wire, second thoughts. Added for what is not weighed.',
    source: 'terms as in AIAA S-120A-2015; the shares are common practice, no source',
  },
  'hover efficiency': {
    words:
      'The least power that can hold the weight in the air, as a share of what the pack gives. ' +
      'Small propellers lose most of it.',
    source:
      'momentum theory; measured 0.10 at 31 mm to 0.51 at 381 mm (test stands; NASA/TM-2018-219758)',
  },
  'thrust to weight': {
    words:
      'Full thrust of all motors over the weight. At 2 it hovers near half throttle; ' +
      'below 1.5 too little is left in hand.',
    source: 'half throttle: ArduPilot documentation; 1.5 is common practice, no source',
  },
  joint: {
    words: 'Parts held by a screw: what it passes through, and what its thread bites into.',
    source: 'clearance holes by ISO 273, screws by ISO 4762, ISO 7380-1 and ISO 10642',
  },
  insert: {
    words:
      'A brass thread melted into a boss. It holds fully with 2.4 mm of plastic round it and 70 % infill there.',
    source: 'J. Manuf. Mater. Process. 2023, 7(1), 42, doi 10.3390/jmmp7010042',
  },
  'carbon twin': {
    words:
      'A flat part as if cut from carbon plate: same outline, the stocked thickness that bends about as little.',
    source:
      'bending stiffness of a plate grows with the cube of its thickness (Roark, ch. 8; from memory)',
  },
  inertia: {
    words:
      'How hard the aircraft is to turn about an axis: each mass times its distance squared, added up.',
    source: 'any textbook of mechanics',
  },
  'mean chord': {
    words:
      'The chord of a straight wing that would act like this one; where it balances is told along it.',
    source: COMMON,
  },
  tare: {
    words:
      'What lies on the scale besides the piece and was not zeroed away; it is taken off the reading.',
    source: COMMON,
  },
} as const satisfies Readonly<Record<string, HelpLine>>

export type HelpWord = keyof typeof HELP_WORDS
