import { type Material, Vector2 } from 'three';

/**
 * Ribbons keep a least width in pixels, so that a groove a hand wide is still seen from across the hill. Their
 * geometry carries `position` on the centre line, `across` (half the width as a vector) and `share` (−1 to 1).
 */
export interface RibbonView {
  /** Size of the picture being drawn, px. */
  readonly size: Vector2;
}

export function ribbonView(): RibbonView {
  return { size: new Vector2(1280, 800) };
}

/** GLSL that moves a vertex from the centre line outwards; shared by every ribbon material. */
const WIDEN = /* glsl */ `
  vec3 transformed = position;
  {
    vec4 middle = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
    vec4 edge = projectionMatrix * modelViewMatrix * vec4(position + across, 1.0);
    float grow = 1.0;
    if (middle.w > 0.0 && edge.w > 0.0) {
      vec2 px = (edge.xy / edge.w - middle.xy / middle.w) * 0.5 * ribbonSize;
      grow = clamp(ribbonLeast / max(length(px), 1e-4), 1.0, 60.0);
    }
    transformed += across * share * grow;
  }
`;

/**
 * Makes a material draw ribbons at least `leastPx` wide.
 * @returns a setter for the least width
 */
export function widenRibbon(material: Material, view: RibbonView, leastPx: number): (px: number) => void {
  const least = { value: leastPx / 2 };
  material.onBeforeCompile = shader => {
    shader.uniforms.ribbonSize = { value: view.size };
    shader.uniforms.ribbonLeast = least;
    shader.vertexShader = `attribute vec3 across;
      attribute float share;
      uniform vec2 ribbonSize;
      uniform float ribbonLeast;
      ${shader.vertexShader.replace('#include <begin_vertex>', WIDEN)}`;
  };
  return px => {
    least.value = px / 2;
  };
}
