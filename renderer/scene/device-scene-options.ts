import type { SceneOptions } from './scene-options.ts';

const IN_SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

let software: boolean | null = null;

/** Whether the page's WebGL is worked out by the processor; such machines get the plain look. */
function drawsInSoftware(): boolean {
  if (software !== null) return software;
  const context = document.createElement('canvas').getContext('webgl2');
  const names = context?.getExtension('WEBGL_debug_renderer_info');
  software = names ? IN_SOFTWARE.test(String(context!.getParameter(names.UNMASKED_RENDERER_WEBGL))) : false;
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return software;
}

/** How a scene is drawn on this machine, for this person. */
export function deviceSceneOptions(): Pick<SceneOptions, 'look' | 'pixelRatioLimit' | 'reducedMotion'> {
  return {
    reducedMotion: matchMedia('(prefers-reduced-motion: reduce)').matches,
    ...(drawsInSoftware() ? { look: 'plain', pixelRatioLimit: 1 } : {}),
  };
}
