import type { MassLine } from '../model/aircraft.ts'

/** How the text of every mass line ends. */
export const RULES_NOTE = "check your authority's rules"

const POUND_G = 453.592_37
const READ_ON = '2026-11-25'

const line = (
  id: string,
  name: string,
  thresholdG: number,
  meaning: string,
  source: string,
): MassLine => ({
  id,
  name,
  thresholdG,
  meaning: `${meaning}; ${RULES_NOTE}`,
  readOn: READ_ON,
  source,
})

const EASA = 'easa.europa.eu/en/faq/116513 on Reg. (EU) 2019/947, UAS.OPEN.020(5)(a), .040(4)(a)'
const UK_PAGES =
  'trade pages on the rules from 1 January 2026 (aerisurvltd.com, mmoww.net), not the authority ' +
  'itself: verify on caa.co.uk'
const FAA = 'FAA AIM 11-2-1; 14 CFR Part 48 and Part 107'

/**
 * Where rules change for a craft the builder made, with everything on board that flies. Not legal
 * advice; the user edits them. Below means strictly below. Law changes: `readOn` says how old this
 * is.
 */
export const MASS_LINES: readonly MassLine[] = [
  line(
    'eu-250',
    'EU 250 g',
    250,
    'Below 250 g, and below 19 m/s, a privately built craft may fly in subcategory A1; ' +
      'from 250 g on in A3, 150 m from where people live and work, and its operator registers (with a ' +
      'camera below 250 g too)',
    `${EASA}; Inside GNSS Jul/Aug 2019 p. 44 on registration`,
  ),
  line(
    'eu-25000',
    'EU 25 kg',
    25_000,
    'Below 25 kg a privately built craft may fly in the open category, subcategory A3; from 25 kg on it may not',
    EASA,
  ),
  line(
    'uk-100',
    'UK 100 g',
    100,
    'From 100 g on the pilot needs a Flyer ID, and an Operator ID if the craft has a camera',
    UK_PAGES,
  ),
  line(
    'uk-250',
    'UK 250 g',
    250,
    'From 250 g on an Operator ID is needed with or without a camera',
    UK_PAGES,
  ),
  line('uk-25000', 'UK 25 kg', 25_000, 'The open category ends at 25 kg', UK_PAGES),
  line(
    'us-250',
    'US 0.55 lb (249.48 g)',
    0.55 * POUND_G,
    'Above 0.55 lb a craft flown for recreation has to be registered; 250 g is only a rounding of it',
    FAA,
  ),
  line(
    'us-25000',
    'US 55 lb (24.948 kg)',
    55 * POUND_G,
    'Part 107 ends at 55 lb; 25 kg is only a rounding of it',
    FAA,
  ),
  line(
    'jp-100',
    'Japan 100 g',
    100,
    'From 100 g on a craft counts as an unmanned aircraft and has to be registered (since June 2022)',
    'horikawa-gyosei.com, read in part',
  ),
]

/**
 * Class labels of makers' craft. They change nothing for a craft the builder made, and are only
 * worth knowing.
 */
export const INFORMATION_LINES: readonly MassLine[] = [
  line(
    'eu-c1-900',
    'EU class C1, 900 g',
    900,
    'For information: a class label makers give to craft below 900 g; it does not apply to a self-built craft',
    'Del. Reg. (EU) 2019/945, summary on flynex.io',
  ),
  line(
    'eu-c2-4000',
    'EU class C2, 4 kg',
    4000,
    'For information: a class label makers give to craft below 4 kg; it does not apply to a self-built craft',
    'Del. Reg. (EU) 2019/945, summary on flynex.io',
  ),
]
