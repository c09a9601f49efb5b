import { HABIT_FIELDS } from '../core/data/habits.ts'
import { HABIT_LIMITS, PATTERN_NAMES, RECIPE_LIMITS } from '../core/data/limits.ts'
import { MATERIALS } from '../core/data/materials.ts'
import { CURRENCY_CODES } from '../core/data/prices.ts'
import { FLOOR_MM_S, MORE_FIELDS } from '../core/data/printerMore.ts'
import { PRINTER_FIELDS, PRINTERS } from '../core/data/printers.ts'
import { HABIT_DEFAULTS, type HabitNumber, type Habits } from '../core/model/habits.ts'
import { ROLES } from '../core/data/roles.ts'
import { END_NAMES } from '../core/stiffness/part/chooseLoad.ts'

/**
 * Bad usage: told on stderr, exit code 2. The message is whole sentences, naming what was given and
 * what would do.
 */
export class UsageError extends Error {}

export const LENGTH_UNITS = ['micron', 'millimetre', 'centimetre', 'inch', 'foot', 'metre'] as const

const ids = (items: readonly { readonly id: string }[]): string =>
  items.map(({ id }) => id).join(', ')

const recipeKeys = [...Object.keys(RECIPE_LIMITS), 'pattern', 'supports'].join(', ')
const span = (habit: HabitNumber): string =>
  `${HABIT_LIMITS[habit].min} to ${HABIT_LIMITS[habit].max}`
/** One habit a line: its key, what is taken unless told, what is accepted, what it is. */
const habitLines = Object.entries(HABIT_DEFAULTS).map(([key, usual]) => {
  const field = HABIT_FIELDS[key as keyof Habits]
  const accepted = 'choices' in field ? field.choices.join(' or ') : span(key as HabitNumber)
  return `  ${key.padEnd(16)} ${String(usual)} (${accepted}). ${field.what}`
})
const printerKeys = PRINTER_FIELDS.map(({ key }) => key).join(', ')
/** What may be left out, and what is taken then. */
const moreLines = MORE_FIELDS.map(({ key, follows, unit }) =>
  follows === null
    ? `${key} is ${FLOOR_MM_S} ${unit} unless given.`
    : `${key} is ${follows.ratio} of ${follows.key} unless given.`,
)

export const HELP = `Weighs parts before they are printed: grams, metres of filament, cost and hours from mesh files.

  npm run --silent price -- [options] MESH...
  npm run --silent price -- --frame FILE|DEMO [--lessons FILE] [--spools JSON] [--printers IDS]
                                [--loads JSON] [--coupon FILE] [--json]
  npm run --silent price -- --frame FILE|DEMO --find JSON [--lessons FILE] [--loads JSON] [--json]
  npm run --silent price -- --toolpath FILE [--json] [MESH...]

MESH is an STL, OBJ or 3MF file, or a ZIP of them; the content decides, not the name.

  --recipe JSON|FILE|ROLE   how the parts are printed; what is left out is as usual.
                            Keys: ${recipeKeys}.
                            Patterns: ${Object.keys(PATTERN_NAMES).join(', ')}.
                            Roles: ${Object.keys(ROLES).join(', ')}.
                            firstLayerMm is layerMm unless given.
  --zone FILE[=PCT]         a mesh in the axes and unit of the one MESH: inside it the infill is PCT per cent
                            (100 unless given). Walls and skins stay as they are. As often as there are zones; where
                            two overlap, the later one holds.
  --material ID|JSON        one of ${ids(MATERIALS)};
                            or JSON with densityGCm3, pricePerKg, diameterMm, flow and, as "id", one to start from.
                            A density given here counts as your spool's own and narrows the range.
  --printer ID|JSON         one of ${ids(PRINTERS)};
                            or JSON with ${printerKeys}
                            and, as "id", one to start from. accelMmS2 alone holds for walls and travels too.
                            ${moreLines.join(`\n${' '.repeat(28)}`)}
  --habits JSON|FILE        what is known of how the printer lays what geometry leaves open; the rest is as usual,
                            with more doubt. Keys below.
  --quantity N              pieces of each part in the total; 1 unless given.
  --unit UNIT               what a number means in STL and OBJ, which do not say: ${LENGTH_UNITS.join(', ')}.
                            millimetre unless given. 3MF says itself.
  --keep-hairs              closed bodies thinner than a line, off from the rest, are left out unless this is given.
  --full                    counts all layers, however long that takes. Without it a file that takes longer than 10 s
                            keeps the figures of some of its layers, with a wider range; its "coarse" is then true.
  --currency CODE           any of ISO 4217, by your locale unless given. What filament, electricity and wear usually
                            cost is known in ${CURRENCY_CODES.slice(0, 9).join(', ')},
                            ${CURRENCY_CODES.slice(9).join(', ')}; in others they are 0 but for
                            the pricePerKg of --material, and that is told on stderr.
  --frame FILE|DEMO         a frame saved by the page (.preweigh), or one of its samples: demo (that is sandpiper) or
                            tern. Its parts, recipes, quantities, printer, prices and bought items are its own, so no
                            MESH and no other option but --lessons, --loads, --spools, --printers, --find, --coupon,
                            --habits, --full, --stiffness and --json goes with it.
  --stiffness               with --frame and --json: how every part gives, not arms alone; seconds a part.
  --loads JSON|FILE         with --frame: how parts are held and pushed, as typed on their sheets of the page, which
                            no file keeps: {"part": {"loadN": 12, "hold": "x-low", "push": "x-high",
                            "direction": "z"}}. What is left out is as the aircraft says; ends and axes are those of
                            the part on its bed: ${END_NAMES.join(', ')}. A part is its name, item number or role; it
                            is then in stiffness, arm or not, and --find asks how it gives under that load.
  --find JSON               searches walls, skins and infill of every part of the frame, and lists the recipes that none
                            beats in all of grams, hours, cost and stiffness. Keys, all may be left out:
                            printedG, hours, cost at most; lessG this much lighter than it stands;
                            stiffness at least this share of what stands, one number or {"part": share};
                            deflectionMm {"part": most under its load}, firstHz {"part": least first tone, or
                            "turns": clear of its propeller's in hover};
                            free parts whose stiffness nobody asks for; keepParts, keepSettings (walls, skins, infill)
                            stay as they are; walls, skins, infillPct, layerMm lists to try instead of the usual;
                            materials ids to try (as they are unless given; layerMm too); most solutions listed
                            (12, as JSON 500). A part is its name, item number or role. Layers are counted on all
                            cores, which takes a minute or more.
  --lessons FILE            what other frames taught of spools and printer, for --frame: a file of lessons saved by
                            the page, or a saved frame, whose own weighings and timed prints then teach.
  --spools JSON             what stands on the shelf, for --frame: JSON or a file of it, such as
                            [{"material": "petg", "grossG": 812, "emptyG": 223}], as the scale shows it and the empty
                            reel. A material is the id of one that comes along or of the frame’s own. Tells which
                            spool finishes each run, what stays on it and what is to be bought.
  --printers IDS            others that print --frame beside its own, by their classes with commas between, such as
                            ordinary,fast-enclosed. Each run is on one; finish tells hours one after the other and
                            side by side.
  --coupon FILE             writes a small print with the holes of --frame, stepped by 0.1 mm, as STL: measured, they
                            tell the page what holes lose.
  --toolpath FILE           a toolpath as the printer is sent it (G-code, also packed with gzip): its plastic, its
                            time, and from the moves alone the recipe and habits it was made with. --material,
                            --printer and --unit go with it. Of the meshes given besides it tells which one it prints,
                            and the plastic of both by place.
  --json                    figures as JSON on stdout.
  --lines                   one line of JSON a part and no total, each as soon as it is priced: not in the order of
                            the files, so that a slow one holds up no other.
  --help                    this text.

Figures of a part are for one piece printed by itself; the total is for all pieces. low and high bound what is likely.
depositMm3 is all plastic laid: walls, skins, infill, support and brim. massG is the part as it goes on the scale,
support and brim removed; filamentM, cost and timeS are with them. travelM is the way without plastic, retracts how
often the filament is drawn back on it, support and brim left out.

With --frame, total holds the pieces that fly and totalWithSpares those in the bag too. ledger adds parts and bought
items: massG and costEach are of one piece (costEach null where a part is known by the scale alone), basicMassG is the
sum of quantity × massG, growthG what is added for what is not known yet, marginG the limit less predictedMassG. odds
are the chances to end below the limit and each mass line, growth left out, with no yes or no within 3 % of a line.
twin is one piece of each flat part cut from plate, as stiff by the solid model where stiffness tells of the part,
else by strips of its layers; arms how they ring printed, as stiffness tells (or as beams of a typed free length), and
cut. stiffness is how printed arms give and first ring as solid cells of their layers, held at their joints, or at an
end, pushed where the motor sits by its full throttle, or by 10 N, unless --loads says otherwise; safety is strength
over the highest stress.
balance and flight are null where the frame has no places or no flight set-up, flight for a plane
too; cgMm is forward, left, up, inertiaKgM2 about roll, pitch, yaw. flight is at basicMassG; hoverThrottle goes by the
square root, hoverThrottleLinear straight. notes are to be read. readings are those of scale and clock and what came
of each, learned what weighings say of a spool on a printer (factor: grams of a solid print over calculated),
learnedHours what the clock says of the printer. massG of a part is after learning, calculatedG before. runs are the
print runs of all pieces, whose hours and money the parts share; joints what meets what, bought things with a body
among it, with the screws that asks for; clashes what runs into what there, by how much.
drill is every hole of one piece of each part: what it is for, as drawn, and the drill to fetch, null where none is
needed.

With --find, --json prints the list of solutions, lightest first: massG of the pieces that fly, hours and cost of all
that is printed, stiffness of the part that loses most over the part as it stands (from sections of the layers, good to
15 %; null where nobody asks for any; of parts asked by deflectionMm or firstHz by their model), gives of those parts
(solid or beam model, good to 25 % and 13 %), recipes of every part. None is an empty list, and why is told on stderr.

With --toolpath, filamentM and depositMm3 are all that is pushed through the nozzle, layersMm3 what lies in layers,
without priming; timeS leaves heat-up out. recipe and habits are null or left out where the moves do not tell; kinds
have the plastic of each kind of line, and the width and speed of those above the first layer.

Habits with what is taken unless told, and what is accepted:
${habitLines.join('\n')}

Exit code: 0 all priced, 1 some file or part failed and the rest is priced, or --find
found nothing, 2 the command was not understood.
`
