import { effect, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { getHost } from '../../host/index.ts';
import { Segments } from '../../kit/index.ts';
import type * as Scene from '../../scene/index.ts';
import type { EdgeCamera, EdgeSceneHandle } from '../../scene/index.ts';
import { activePair, chosenPairs, report, view } from '../../state/index.ts';
import { FlatDrawings } from './flat-drawings.tsx';
import { sceneInput, sceneWords } from './scene-input.ts';
import { ScenePlayback } from './scene-playback.tsx';
import { camera, exaggeration } from './sheet-state.ts';

const CAMERAS: readonly { value: EdgeCamera; label: string; title: string }[] = [
  { value: 'ski', label: 'Ski', title: 'The ski in its groove' },
  { value: 'along', label: 'Along', title: 'Along the length of the ski' },
  { value: 'side', label: 'Side', title: 'From the side' },
  { value: 'above', label: 'Above', title: 'The ski from above' },
  { value: 'arc', label: 'Arc', title: 'The whole arc, to scale, from above' },
  { value: 'hill', label: 'Hill', title: 'The arc on the hill' },
];

/** The ski in the snow and the arc it carves; flat drawings where the page cannot draw in space. */
export function SceneStage(): JSX.Element {
  const box = useRef<HTMLDivElement>(null);
  const scene = useSignal<EdgeSceneHandle | null>(null);
  const flat = useSignal<string | null>(null);

  useEffect(() => {
    let gone = false;
    let stop = () => {};
    const drawn = async () => {
      // The drawing library is large and only some views need it.
      const { webglAvailable, ...drawing } = await import('../../scene/index.ts');
      if (gone || !box.current) return;
      if (!webglAvailable()) {
        flat.value = 'This browser or its graphics driver has no WebGL 2, so the snow is drawn flat.';
        return;
      }
      const { made, end } = begin(drawing, box.current, () => {
        flat.value = 'The graphics driver gave up the picture, so the snow is drawn flat.';
      });
      scene.value = made;
      stop = end;
    };
    drawn().catch((error: Error) => {
      flat.value = `The snow is drawn flat: ${error.message}`;
    });
    return () => {
      gone = true;
      stop();
    };
  }, []);

  const active = activePair.value;
  if (flat.value !== null && active) {
    return (
      <section class="scene flat" aria-label="The ski in the snow">
        <p class="scene-note" role="status">
          {flat.value}
        </p>
        <div class="stage-split">
          <FlatDrawings pairs={chosenPairs.value} active={active} />
        </div>
      </section>
    );
  }
  return (
    <section class="scene" aria-label="The ski in the snow">
      <div class="scene-head">
        <Segments
          label="Look from"
          labelHidden
          value={camera.value}
          options={CAMERAS}
          onInput={value => {
            camera.value = value;
          }}
        />
        <Segments
          label="Bend"
          value={exaggeration.value}
          options={[
            { value: 1, label: '×1', title: 'True to scale' },
            { value: 3, label: '×3', title: 'Bend and twist drawn three times as large' },
            { value: 10, label: '×10', title: 'Bend and twist drawn ten times as large' },
          ]}
          onInput={value => {
            exaggeration.value = value;
          }}
        />
        <button type="button" class="bare scene-save" onClick={() => savePicture(scene.value)}>
          Save<span class="sr-only"> the picture of the snow, PNG</span>
        </button>
      </div>
      <div class="scene-box" ref={box}>
        {scene.value === null && <p class="scene-waiting">Laying out the snow …</p>}
      </div>
      <ScenePlayback scene={scene.value} />
    </section>
  );
}

/** Makes the scene and keeps it in step with the state; `end` takes it off again. */
function begin(
  { createScene, lookHere }: Pick<typeof Scene, 'createScene' | 'lookHere'>,
  box: HTMLElement,
  lost: () => void,
): { made: EdgeSceneHandle; end: () => void } {
  const made = createScene(box, { kind: 'edge', theme: view.peek().theme, ...lookHere() });
  made.canvas.addEventListener('webglcontextlost', lost);
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
      made.canvas.removeEventListener('webglcontextlost', lost);
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
    const bytes = new Uint8Array(await (await scene.snapshot()).arrayBuffer());
    if (await getHost().exportFile(name, 'image/png', bytes)) report(`${name} saved`);
  } catch (error) {
    report(`${name} could not be saved: ${(error as Error).message}`, 'error');
  }
}
