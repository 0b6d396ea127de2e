/** True when the page can make a WebGL 2 context; the views fall back to their flat drawings otherwise. */
export function webglAvailable(): boolean {
  if (typeof document === 'undefined') return false;
  const context = document.createElement('canvas').getContext('webgl2');
  if (!context) return false;
  // Browsers keep only a handful of contexts alive, so the one made for asking is given back.
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return true;
}
