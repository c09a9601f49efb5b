import type { DemoAircraft } from '../core/model/demoAircraft.ts'
import type { Material } from '../core/model/figures.ts'
import type { CarbonFrame, RoleId } from '../core/model/frame.ts'
import type { LengthUnit } from '../core/model/mesh.ts'
import type { Recipe } from '../core/model/settings.ts'

/** What lies beside a demo aircraft's mesh files. Everything in it is invented. */
export interface DemoManifest {
  readonly name: string
  /** One paragraph of plain text for the visitor: mission, limits, what to look for. */
  readonly story: string
  /** Always true: the page says that these are samples. */
  readonly labelledSample: true
  readonly parts: readonly DemoPart[]
  /** A frame to compare with; null where there is none. */
  readonly carbon: CarbonFrame | null
  readonly materials: readonly Material[]
  /** Id of a built-in printer. */
  readonly printer: string
  readonly aircraft: DemoAircraft
  readonly scaleLog?: readonly DemoWeighIn[]
  readonly crashLog?: DemoCrashLog
}

export interface DemoPart {
  /** Beside the manifest. */
  readonly file: string
  readonly name: string
  readonly quantity: number
  readonly spares: number
  /** How many of `quantity` are mirrored copies. */
  readonly mirrored: number
  /** The unit a visitor starts from, which is not always the one the file was drawn in. */
  readonly unit: LengthUnit
  readonly material: string
  /** The preset nearest to the recipe; the recipe below is what counts. */
  readonly role: RoleId | null
  readonly recipe: Partial<Recipe>
}

/** One look at the scale, supports and brim removed. Invented sample. */
interface DemoWeighIn {
  readonly part: string
  readonly massG: number
  readonly note: string
}

/** What broke. Invented sample. */
interface DemoCrashLog {
  readonly flights: number
  readonly broken: readonly { readonly part: string; readonly count: number }[]
}
