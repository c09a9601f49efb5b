import * as v from 'valibot'
import type { DemoAircraft } from '../../core/model/demoAircraft.ts'
import { PRINTER_DEFAULT, PRINTERS } from '../../core/data/printers.ts'
import type { Material, Printer } from '../../core/model/figures.ts'
import type { CarbonFrame, RoleId } from '../../core/model/frame.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { Outcome, Problem } from '../../core/model/problem.ts'
import type { Recipe } from '../../core/model/settings.ts'
import {
  FlightSchema,
  ItemSchema,
  JointSchema,
  LimitSchema,
  PlaceSchema,
  SeasonSchema,
  WingSchema,
} from '../storage/aircraftSchema.ts'
import {
  CarbonSchema,
  MaterialSchema,
  PiecesSchema,
  RecipeSchema,
  RoleIdSchema,
  SparesSchema,
  UnitSchema,
} from '../storage/schema.ts'
import type { IncomingFile } from '../store/types.ts'

export type DemoId = 'sandpiper' | 'tern'

/** A demo aircraft as its manifest tells it, with its mesh files. */
export interface Demo {
  readonly name: string
  /** What the aircraft is for and what there is to find; says that it is invented. */
  readonly story: string
  readonly parts: readonly DemoPart[]
  readonly materials: readonly Material[]
  readonly printer: Printer
  readonly carbon: CarbonFrame | null
  readonly aircraft: DemoAircraft
}

export interface DemoPart {
  readonly file: IncomingFile
  readonly name: string
  readonly quantity: number
  readonly spares: number
  readonly mirrored: number
  readonly unit: LengthUnit
  readonly materialId: string
  readonly role: RoleId | null
  readonly recipe: Partial<Recipe>
}

export interface DemoSource {
  /** Never rejects. */
  load(id: DemoId): Promise<Outcome<Demo>>
}

/** What this page uses of a manifest; the rest of it is for later pages. */
const ManifestSchema = v.object({
  name: v.string(),
  story: v.string(),
  labelledSample: v.literal(true),
  parts: v.array(
    v.object({
      file: v.pipe(v.string(), v.regex(/^[\w.-]+$/, 'must be a plain file name')),
      name: v.string(),
      quantity: PiecesSchema,
      spares: SparesSchema,
      mirrored: SparesSchema,
      unit: UnitSchema,
      material: v.string(),
      role: v.nullable(RoleIdSchema),
      recipe: v.partial(RecipeSchema),
    }),
  ),
  carbon: v.nullable(CarbonSchema),
  materials: v.array(MaterialSchema),
  printer: v.string(),
  aircraft: v.object({
    items: v.array(ItemSchema),
    weighedG: v.record(v.string(), v.pipe(v.number(), v.gtValue(0))),
    limitG: LimitSchema,
    printedLimitG: LimitSchema,
    places: v.array(PlaceSchema),
    joints: v.exactOptional(v.array(JointSchema)),
    flight: v.nullable(FlightSchema),
    wing: v.nullable(WingSchema),
    season: SeasonSchema,
  }),
})

/** Demos that lie beside the page. `base` is the page's address, `get` the browser's `fetch`. */
export function createDemoSource(base: string, get: typeof fetch): DemoSource {
  async function fetchOk(path: string): Promise<Response> {
    const answer = await get(new URL(`demo/${path}`, base))
    if (!answer.ok) throw new Error(`demo/${path} answered ${answer.status}`)
    return answer
  }

  async function loadAll(id: DemoId): Promise<Demo> {
    const listed: unknown = await (await fetchOk(`${id}.json`)).json()
    const manifest = v.parse(ManifestSchema, listed)
    const names = [...new Set(manifest.parts.map((part) => part.file))]
    const blobs = new Map(
      await Promise.all(
        names.map(async (name) => [name, await (await fetchOk(name)).blob()] as const),
      ),
    )
    return {
      name: manifest.name,
      story: manifest.story,
      materials: manifest.materials,
      printer: PRINTERS.find((printer) => printer.id === manifest.printer) ?? PRINTER_DEFAULT,
      carbon: manifest.carbon,
      aircraft: manifest.aircraft,
      parts: manifest.parts.map(({ file, material, ...part }) => ({
        ...part,
        recipe: defined(part.recipe),
        materialId: material,
        file: { name: file, blob: blobs.get(file) ?? new Blob() },
      })),
    }
  }

  return {
    async load(id) {
      try {
        return { ok: true, value: await loadAll(id) }
      } catch (error) {
        return { ok: false, problem: noDemo(error) }
      }
    },
  }
}

/** Without keys that are there but undefined, so that they do not overwrite a default. */
function defined(recipe: { [K in keyof Recipe]?: Recipe[K] | undefined }): Partial<Recipe> {
  return Object.fromEntries(Object.entries(recipe).filter(([, value]) => value !== undefined))
}

function noDemo(error: unknown): Problem {
  const words = error instanceof Error ? error.message : String(error)
  return {
    code: 'unreadable-file',
    message: `The sample aircraft could not be loaded (${words}).`,
    advice: 'Check that the page is still online and try again, or drop mesh files of your own.',
  }
}
