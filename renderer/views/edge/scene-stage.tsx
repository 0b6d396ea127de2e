import { effect, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { PlainKey } from '../../../core/language/index.ts';
import { getHost } from '../../host/index.ts';
import { Segments, usePicture, worded } from '../../kit/index.ts';
import type * as Scene from '../../scene/index.ts';
import type { EdgeCamera, EdgeSceneHandle } from '../../scene/index.ts';
import { activePair, chosenPairs, errorWords, report, t, view } from '../../state/index.ts';
import { FlatDrawings } from './flat-drawings.tsx';
import { sceneInput, sceneWords } from './scene-input.ts';
import { ScenePlayback } from './scene-playback.tsx';
import { camera, exaggeration } from './sheet-state.ts';

const CAMERAS: readonly { value: EdgeCamera; label: PlainKey; title: PlainKey }[] = [
  { value: 'ski', label: 'edge.camera.ski', title: 'edge.camera.skiHint' },
  { value: 'along', label: 'edge.camera.along', title: 'edge.camera.alongHint' },
  { value: 'side', label: 'edge.camera.side', title: 'edge.camera.sideHint' },
  { value: 'above', label: 'edge.camera.above', title: 'edge.camera.aboveHint' },
  { value: 'arc', label: 'edge.camera.arc', title: 'edge.camera.arcHint' },
  { value: 'hill', label: 'edge.camera.hill', title: 'edge.camera.hillHint' },
];

/** The ski in the snow and the arc it carves; flat drawings where the page cannot draw in space. */
export function SceneStage(): JSX.Element {
  const scene = useSignal<EdgeSceneHandle | null>(null);
  const { box, flat, again } = usePicture(
    // The drawing library is large and only some views need it.
    () => import('../../scene/index.ts'),
    (drawing, host) => {
      const { made, end } = begin(drawing, host);
      scene.value = made;
      return {
        canvas: made.canvas,
        end() {
          scene.value = null;
          end();
        },
      };
    },
    {
      none: () => t('edge.flat.noWebGL'),
      lost: () => t('edge.flat.lost'),
      notFetched: () => t('edge.snowDrawnFlat', { error: t('kit.notFetched') }),
    },
  );

  const active = activePair.value;
  if (flat !== null && active) {
    return (
      <section class="scene flat" aria-label={t('edge.scene.label')}>
        <p class="scene-note" role="status">
          {flat}{' '}
          {again && (
            <button type="button" class="quiet" onClick={again}>
              {t('kit.tryAgain')}
            </button>
          )}
        </p>
        <div class="stage-split">
          <FlatDrawings pairs={chosenPairs.value} active={active} />
        </div>
      </section>
    );
  }
  return (
    <section class="scene" aria-label={t('edge.scene.label')}>
      <div class="scene-head">
        <Segments
          label={t('board.lookFrom')}
          labelHidden
          value={camera.value}
          options={worded(CAMERAS)}
          onInput={value => {
            camera.value = value;
          }}
        />
        <Segments
          label={t('edge.exaggerate')}
          value={exaggeration.value}
          options={[
            { value: 1, label: '×1', title: t('edge.trueToScale') },
            { value: 3, label: '×3', title: t('edge.times3') },
            { value: 10, label: '×10', title: t('edge.times10') },
          ]}
          onInput={value => {
            exaggeration.value = value;
          }}
        />
        <button type="button" class="bare scene-save" onClick={() => savePicture(scene.value)}>
          {t('common.save')}
          <span class="sr-only"> {t('edge.savePicture')}</span>
        </button>
      </div>
      <div class="scene-box" ref={box}>
        {scene.value === null && <p class="scene-waiting">{t('edge.layingOut')}</p>}
      </div>
      <ScenePlayback scene={scene.value} />
    </section>
  );
}

/** Makes the scene and keeps it in step with the state; `end` takes it off again. */
function begin(
  { createScene, lookHere: deviceSceneOptions }: Pick<typeof Scene, 'createScene' | 'lookHere'>,
  box: HTMLElement,
): { made: EdgeSceneHandle; end: () => void } {
  const made = createScene(box, { kind: 'edge', theme: view.peek().theme, ...deviceSceneOptions() });
  const stops = [
    effect(() => made.setTheme(view.value.theme)),
    effect(() => {
      const input = sceneInput();
      if (input) made.update(input);
      made.describe(sceneWords());
    }),
    effect(() => made.setCamera(camera.value)),
  ];
  return {
    made,
    end() {
      for (const stop of stops) stop();
      made.dispose();
    },
  };
}

async function savePicture(scene: EdgeSceneHandle | null): Promise<void> {
  if (!scene) return;
  const name = `${
    activePair
      .peek()
      ?.name.toLowerCase()
      .replace(/[^a-z0-9]+/g, '-') ?? 'ski'
  }-on-edge.png`;
  try {
    const picture = await scene.snapshot();
    if (!picture) return report(t('kit.tooLargePicture'), 'error');
    const bytes = new Uint8Array(await picture.arrayBuffer());
    if (await getHost().exportFile(name, 'image/png', bytes)) report(t('common.saved', { name }));
  } catch (error) {
    report(t('edge.couldNotBeSaved', { name, error: errorWords(error) }), 'error');
  }
}
