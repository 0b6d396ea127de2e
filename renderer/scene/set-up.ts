import type { Group, Mesh, Vector3 } from 'three';
import type { CameraPose } from './camera-rig.ts';
import type { LabelSet } from './label.ts';
import type { Playback } from './playback.ts';
import type { SlopeFrame } from './slope-frame.ts';
import type { SceneTheme } from './theme.ts';

/** What a stage needs of the thing it shows. */
export interface SetUp<Input, CameraName extends string> {
  readonly root: Group;
  readonly labels: LabelSet;
  readonly playback: Playback;
  readonly cameras: readonly CameraName[];
  readonly frame: SlopeFrame;
  readonly snow: Mesh;
  /** Middle and half size of the part that throws shadows, world metres. */
  readonly shadowCentre: Vector3;
  readonly shadowReach: number;
  update(input: Input): void;
  /** Puts everything where it belongs at the playback's time. */
  refresh(): void;
  applyTheme(theme: SceneTheme): void;
  pose(camera: CameraName, aspect: number, out: CameraPose): void;
  /** Camera of the small picture while `camera` fills the large one. */
  insetFor(camera: CameraName): CameraName;
  /** Whether the detail labels are shown with this camera; if not, those that stand for what is far off. */
  detailLabels(camera: CameraName): boolean;
  /** Makes the surface cheaper to draw; called once, before anything is drawn. */
  coarsen(): void;
  /** Leaves out of the small picture what nobody could see there; called around it. */
  dress?(smallPicture: boolean, camera: CameraName): void;
  dispose(): void;
}
