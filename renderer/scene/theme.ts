/** Colours and light of the scene for one look. */
export interface SceneTheme {
  readonly name: ThemeName;
  readonly skyTop: string;
  readonly skyHorizon: string;
  readonly ridgeFar: string;
  readonly ridgeNear: string;
  readonly snow: string;
  readonly offPiste: string;
  readonly sunColour: string;
  readonly sunStrength: number;
  readonly skyLight: string;
  readonly groundLight: string;
  readonly fillStrength: number;
  /** How strongly the groomed ridges tilt the light (1 is true relief). */
  readonly relief: number;
  readonly groove: string;
  readonly ink: string;
  readonly plate: string;
  readonly frame: string;
  readonly figure: string;
  /** Lines and labels are this much larger than in the plain look. */
  readonly emphasis: number;
  /** Colours of the force arrows; each arrow is also named by its label. */
  readonly weight: string;
  readonly snowForce: string;
  readonly sideways: string;
}

/** The looks, by the names the page has for them. */
export type ThemeName = 'snow' | 'night' | 'projector';

export const THEMES: Readonly<Record<ThemeName, SceneTheme>> = {
  snow: {
    name: 'snow',
    skyTop: '#8fb3d6',
    skyHorizon: '#eaf0f5',
    ridgeFar: '#c6d5e4',
    ridgeNear: '#a9bfd5',
    snow: '#f3f6fa',
    offPiste: '#f6f9fc',
    sunColour: '#fff4e2',
    sunStrength: 3.6,
    skyLight: '#bdd3f3',
    groundLight: '#dbe6f2',
    fillStrength: 1.4,
    relief: 0.8,
    groove: '#dfe8f4',
    ink: '#12293d',
    plate: 'rgba(255,255,255,0.88)',
    frame: '#5f7890',
    figure: '#2b3f52',
    emphasis: 1,
    weight: '#4a5a6a',
    snowForce: '#0b6fa4',
    sideways: '#b4540a',
  },
  night: {
    name: 'night',
    skyTop: '#050a17',
    skyHorizon: '#2a3f66',
    ridgeFar: '#22355a',
    ridgeNear: '#182848',
    snow: '#b3bfd3',
    offPiste: '#b0bcd2',
    sunColour: '#dbe5fb',
    sunStrength: 1.2,
    skyLight: '#6c86bb',
    groundLight: '#2b3d63',
    fillStrength: 0.8,
    relief: 0.9,
    groove: '#a3b2cc',
    ink: '#eaf1fd',
    plate: 'rgba(9,16,33,0.86)',
    frame: '#7d93ba',
    figure: '#dfe8f8',
    emphasis: 1,
    weight: '#c3cede',
    snowForce: '#6cc7f5',
    sideways: '#f5b266',
  },
  projector: {
    name: 'projector',
    skyTop: '#b9d0e6',
    skyHorizon: '#ffffff',
    ridgeFar: '#c0cfdd',
    ridgeNear: '#97adc2',
    snow: '#ffffff',
    offPiste: '#ffffff',
    sunColour: '#fff6e8',
    sunStrength: 3.8,
    skyLight: '#a9c4ea',
    groundLight: '#cfdcea',
    fillStrength: 1.25,
    relief: 1.1,
    groove: '#c3cfde',
    ink: '#000000',
    plate: 'rgba(255,255,255,0.97)',
    frame: '#000000',
    figure: '#000000',
    emphasis: 1.6,
    weight: '#333333',
    snowForce: '#00538a',
    sideways: '#a03c00',
  },
};
