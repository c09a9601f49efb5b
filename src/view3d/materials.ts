import {
  AlwaysStencilFunc,
  Color,
  DoubleSide,
  KeepStencilOp,
  LineBasicMaterial,
  NotEqualStencilFunc,
  ReplaceStencilOp,
  ShaderMaterial,
} from 'three'
import type { Palette } from './palette.ts'

/**
 * Which way the shadow leans on the bed per mm of height: back and to the right, away from the
 * standing point of view.
 */
const SHADOW_LEAN = '0.34, 0.3'

/**
 * Flat shading from screen derivatives: no normals are computed, stored or sent, so the largest
 * mesh costs nothing more. The two lights travel with the eye and are those of the thumbnails.
 */
function partMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: 2,
    polygonOffsetUnits: 2,
    uniforms: {
      base: { value: new Color() },
      resting: { value: new Color() },
      restingUpToMm: { value: 0.05 },
    },
    vertexShader: /* glsl */ `
      varying vec3 vView;
      varying vec3 vBed;
      void main() {
        vec4 onBed = modelMatrix * vec4(position, 1.0);
        vec4 seen = viewMatrix * onBed;
        vBed = onBed.xyz;
        vView = seen.xyz;
        gl_Position = projectionMatrix * seen;
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 base;
      uniform vec3 resting;
      uniform float restingUpToMm;
      varying vec3 vView;
      varying vec3 vBed;
      void main() {
        vec3 n = normalize(cross(dFdx(vView), dFdy(vView)));
        float key = max(0.0, dot(n, vec3(-0.3504, 0.7008, 0.6207)));
        float fill = max(0.0, dot(n, vec3(0.9091, -0.1010, 0.4041)));
        vec3 colour = base * (0.5 + 0.63 * key + 0.08 * fill);
        vec3 up = normalize(cross(dFdx(vBed), dFdy(vBed)));
        float rests = step(vBed.z, restingUpToMm) * step(0.999, abs(up.z));
        gl_FragColor = vec4(mix(colour, resting, 0.3 * rests), 1.0);
      }`,
  })
}

/** The part thrown flat onto the bed; the stencil lets each pixel darken once. */
function shadowMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    side: DoubleSide,
    transparent: true,
    depthWrite: false,
    stencilWrite: true,
    stencilRef: 1,
    stencilFunc: NotEqualStencilFunc,
    stencilZPass: ReplaceStencilOp,
    stencilFail: KeepStencilOp,
    stencilZFail: KeepStencilOp,
    uniforms: { tone: { value: new Color() }, opacity: { value: 0 } },
    vertexShader: /* glsl */ `
      void main() {
        vec4 onBed = modelMatrix * vec4(position, 1.0);
        onBed.xy += vec2(${SHADOW_LEAN}) * onBed.z;
        onBed.z = 0.0;
        gl_Position = projectionMatrix * viewMatrix * onBed;
      }`,
    fragmentShader: /* glsl */ `
      uniform vec3 tone;
      uniform float opacity;
      void main() { gl_FragColor = vec4(tone, opacity); }`,
  })
}

export interface Materials {
  readonly part: ShaderMaterial
  readonly shadow: ShaderMaterial
  readonly edge: LineBasicMaterial
  readonly gridFine: LineBasicMaterial
  readonly gridBold: LineBasicMaterial
  readonly dimension: LineBasicMaterial
}

export function createMaterials(): Materials {
  return {
    part: partMaterial(),
    shadow: shadowMaterial(),
    edge: new LineBasicMaterial({ transparent: true, stencilFunc: AlwaysStencilFunc }),
    gridFine: new LineBasicMaterial(),
    gridBold: new LineBasicMaterial(),
    dimension: new LineBasicMaterial(),
  }
}

export function paintMaterials(materials: Materials, palette: Palette): void {
  setUniform(materials.part, 'base', palette.part)
  setUniform(materials.part, 'resting', palette.resting)
  setUniform(materials.shadow, 'tone', palette.shadow)
  setUniform(materials.shadow, 'opacity', palette.shadowOpacity)
  materials.edge.color.copy(palette.edge)
  materials.edge.opacity = palette.edgeOpacity
  materials.gridFine.color.copy(palette.gridFine)
  materials.gridBold.color.copy(palette.gridBold)
  materials.dimension.color.copy(palette.dimension)
}

function setUniform(material: ShaderMaterial, name: string, value: Color | number): void {
  const uniform = material.uniforms[name]
  if (uniform !== undefined) uniform.value = value
}
