import type { ThemeName } from './theme.ts';

export interface SceneOptions {
  readonly theme?: ThemeName;
  /** 'plain' leaves out shadows and smoothing, for machines that draw in software. Default 'full'. */
  readonly look?: 'full' | 'plain';
  /** Highest device pixel ratio drawn; default 2. */
  readonly pixelRatioLimit?: number;
  /** Small second picture in the lower right corner; default true. */
  readonly inset?: boolean;
  /** Cameras and scrubbing jump instead of easing (for people who ask for less motion). */
  readonly reducedMotion?: boolean;
  /** What the picture shows, for people who do not see it. */
  readonly description?: string;
}

export interface SceneStats {
  readonly drawCalls: number;
  readonly triangles: number;
  /** Pictures drawn since the scene was made. */
  readonly frames: number;
  /** Processor time of the last picture, ms. */
  readonly cpuMs: number;
}
