import type {
  AnalyseAnswer,
  AnalyseAsk,
  AnalyseEvent,
  BeamAsk,
  CutAsk,
  LookAnswer,
  LookAsk,
  MeshAsk,
  PartShape,
  PlacedMesh,
  PosesAsk,
  ShapeAsk,
  StiffAsk,
  StiffEvent,
} from './asks/partAsks.ts'
import type {
  ClashesAnswer,
  ClashesAsk,
  DrawAnswer,
  DrawAsk,
  HolesAnswer,
  HolesAsk,
  OffersAnswer,
  OffersAsk,
  RepeatsAnswer,
  RepeatsAsk,
  RunsAnswer,
  RunsAsk,
  WaysAnswer,
  WaysAsk,
} from './asks/frameAsks.ts'
import type {
  OpenAnswer,
  OpenAsk,
  PackAsk,
  SplitAnswer,
  SplitAsk,
  UnpackAnswer,
  UnpackAsk,
} from './asks/fileAsks.ts'
import type { PartSection } from '../core/census/section/types.ts'
import type { PoseOption } from '../core/mesh/poseOptions.ts'
import type { Problem } from '../core/model/problem.ts'
import type { NoBeam, PartSections } from '../core/stiffness/part/sections.ts'
import type { StiffPart } from '../core/stiffness/part/stiffPart.ts'
import type { ToolpathAnswer, ToolpathAsk, ToolpathEvent } from './asks/toolpathAsks.ts'

/** Every kind of job: what is asked, what it tells on its way, what it answers. */
export interface JobTable {
  readonly open: { readonly ask: OpenAsk; readonly event: never; readonly answer: OpenAnswer }
  readonly analyse: {
    readonly ask: AnalyseAsk
    readonly event: AnalyseEvent
    readonly answer: AnalyseAnswer
  }
  readonly mesh: { readonly ask: MeshAsk; readonly event: never; readonly answer: PlacedMesh }
  readonly shape: { readonly ask: ShapeAsk; readonly event: never; readonly answer: PartShape }
  readonly split: { readonly ask: SplitAsk; readonly event: never; readonly answer: SplitAnswer }
  readonly poses: {
    readonly ask: PosesAsk
    readonly event: never
    readonly answer: readonly PoseOption[]
  }
  readonly draw: { readonly ask: DrawAsk; readonly event: never; readonly answer: DrawAnswer }
  readonly offers: { readonly ask: OffersAsk; readonly event: never; readonly answer: OffersAnswer }
  readonly clashes: {
    readonly ask: ClashesAsk
    readonly event: never
    readonly answer: ClashesAnswer
  }
  readonly ways: { readonly ask: WaysAsk; readonly event: never; readonly answer: WaysAnswer }
  readonly repeats: {
    readonly ask: RepeatsAsk
    readonly event: never
    readonly answer: RepeatsAnswer
  }
  readonly holes: { readonly ask: HolesAsk; readonly event: never; readonly answer: HolesAnswer }
  readonly look: {
    readonly ask: LookAsk
    readonly event: never
    readonly answer: LookAnswer | null
  }
  readonly runs: { readonly ask: RunsAsk; readonly event: never; readonly answer: RunsAnswer }
  readonly cut: { readonly ask: CutAsk; readonly event: never; readonly answer: PartSection }
  readonly stiff: {
    readonly ask: StiffAsk
    readonly event: StiffEvent
    readonly answer: StiffPart
  }
  readonly sections: {
    readonly ask: BeamAsk
    readonly event: never
    readonly answer: PartSections | NoBeam
  }
  readonly toolpath: {
    readonly ask: ToolpathAsk
    readonly event: ToolpathEvent
    readonly answer: ToolpathAnswer
  }
  readonly pack: { readonly ask: PackAsk; readonly event: never; readonly answer: Blob }
  readonly unpack: { readonly ask: UnpackAsk; readonly event: never; readonly answer: UnpackAnswer }
}

export type JobKind = keyof JobTable
export type Ask = JobTable[JobKind]['ask']
export type JobEvent = JobTable[JobKind]['event']
export type Answer = JobTable[JobKind]['answer']

/** Page to worker. One at a time: the pool sends the next once the answer is there. */
export interface AskMessage<A = Ask> {
  readonly id: number
  readonly ask: A
}

/** Worker to page; `id` is the one of the question. */
export type ReplyMessage<E = JobEvent, R = Answer> =
  | { readonly id: number; readonly kind: 'event'; readonly event: E }
  | { readonly id: number; readonly kind: 'answer'; readonly answer: R }
  | { readonly id: number; readonly kind: 'problem'; readonly problem: Problem }
