import { FACE_POSES } from '../../core/mesh/pose.ts'
import type { Pose } from '../../core/model/settings.ts'
import { Choice } from '../fields/Choice.tsx'
import { TURN_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

type Face = (typeof FACE_POSES)[number]['face']

/** How the part lies on the bed: one of six faces, or any turn typed in degrees. */
export function PoseField({ pose, write }: { readonly pose: Pose; readonly write: PartEdit }) {
  const [x, y, z] = pose.rotateDeg
  const turn = (rotateDeg: Pose['rotateDeg']) => {
    write.edit({ pose: { rotateDeg } })
  }
  return (
    <>
      <Choice<Face>
        label="Lies on the bed"
        value={FACE_POSES.find((face) => samePose(face.pose, pose))?.face ?? null}
        placeholder="turned freely"
        options={FACE_POSES.map(({ face, name }) => ({ id: face, name }))}
        onChange={(next) => {
          const found = FACE_POSES.find(({ face }) => face === next)
          if (found !== undefined) write.edit({ pose: found.pose })
        }}
      />
      <fieldset className="turns">
        <legend>Turned about</legend>
        <TurnBox axis="x" value={x} onChange={(next) => turn([next, y, z])} />
        <TurnBox axis="y" value={y} onChange={(next) => turn([x, next, z])} />
        <TurnBox axis="z" value={z} onChange={(next) => turn([x, y, next])} />
      </fieldset>
    </>
  )
}

interface TurnBoxProps {
  readonly axis: string
  readonly value: number
  readonly onChange: (value: number) => void
}

function TurnBox({ axis, value, onChange }: TurnBoxProps) {
  return (
    <NumberBox
      label={axis}
      limits={TURN_LIMITS}
      value={value}
      step={1}
      digits={1}
      unit="°"
      onChange={onChange}
    />
  )
}

function samePose(a: Pose, b: Pose): boolean {
  return a.rotateDeg.every((angle, i) => angle === b.rotateDeg[i])
}
