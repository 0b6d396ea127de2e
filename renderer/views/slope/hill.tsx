import './hill.css';
import { computed, effect, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { formatQuantity } from '../../../core/units/index.ts';
import { bendAlong, formOf, ground, hardestRow, hillBends, leadRun, runs } from '../../answers/index.ts';
import { styleOf, usePicture } from '../../kit/index.ts';
import type { HillRun, HillSceneHandle } from '../../scene/index.ts';
import { conditions, type Theme, t, view } from '../../state/index.ts';
import { clock, tick, usePlayer } from './clock.ts';
import { polesOf } from './plan-figure.tsx';
import { PlanView } from './plan-view.tsx';
import { arrowsShown, camera } from './settings.ts';

/** Pictures lower than this keep the labels of the plain look. */
const SMALL_PX = 340;

const theme = computed<Theme>(() => view.value.theme);
const system = computed(() => view.value.system);
const mass = computed(() => conditions.value.massKg);

/** The hill with the skis on it; the flat plan where the page cannot draw in space. */
export function Hill(): JSX.Element {
  const laid = useSignal(false);
  const { box, flat, again } = usePicture(
    // Drawing in space is the heaviest part of the program, so it is fetched when it is first looked at.
    () => import('../../scene/index.ts'),
    ({ createScene, lookHere: deviceSceneOptions }, host) => {
      const scene = createScene(host, { kind: 'hill', theme: theme.peek(), ...deviceSceneOptions() });
      const stops: (() => void)[] = [];
      follow(scene, stops);
      laid.value = true;
      return {
        canvas: scene.canvas,
        end() {
          for (const stop of stops.reverse()) stop();
          laid.value = false;
          scene.onTime(null);
          usePlayer(null);
          scene.dispose();
        },
      };
    },
    {
      none: () => t('board.noWebGL'),
      lost: () => t('board.pictureLost'),
      notFetched: () => t('kit.notFetched'),
    },
  );

  // The picture of a run that is no longer the answer would be taken for it.
  const nothing = laid.value && runs.value.runs.length === 0 && !runs.value.working;
  if (flat !== null) return <PlanView why={flat} again={again} />;
  return (
    <div class={nothing ? 'hill of-nothing' : 'hill'} ref={box}>
      {!laid.value && <p class="hill-waiting">{t('slope.layingOut')}</p>}
      {nothing && <p class="hill-waiting">{t('slope.noRun')}</p>}
    </div>
  );
}

/** Keeps the scene in step with the runs and the settings. */
function follow(scene: HillSceneHandle, stops: (() => void)[]) {
  const start = clock.peek();
  // Runs keep their objects while only arrows, camera or units change: the groove stays laid.
  const drawn = computed<readonly HillRun[]>(() => {
    void theme.value;
    return runs.value.runs.map(({ pair, track }, i) => {
      const table = hillBends[i]?.value;
      return {
        track,
        form: formOf(pair.pair),
        style: styleOf(pair.mark),
        bendAt: table ? bendAlong(table, track) : null,
      };
    });
  });
  const gates = computed(() => polesOf(leadRun.value ?? undefined));
  let begun = false;
  stops.push(
    effect(() => {
      // The labels of the projector's look would cover a small picture.
      const small = theme.value === 'projector' && scene.canvas.clientHeight < SMALL_PX;
      scene.setTheme(small ? 'snow' : theme.value);
    }),
    effect(() => scene.setCamera(camera.value)),
    effect(() => {
      const slope = ground.value;
      if (!slope || drawn.value.length === 0) return;
      const units = system.value;
      scene.update({
        slope,
        runs: drawn.value,
        gates: gates.value,
        mass: mass.value,
        arrows: arrowsShown.value,
        forceText: (name, newtons) =>
          t(`slope.force.${name}`, {
            force: formatQuantity(Math.round(newtons / 10) * 10, 'force', { system: units }).text,
          }),
      });
      const names = runs.value.runs.map(run => run.pair.name).join(' and ');
      scene.describe(`${t('slope.hillDescription', { names })}. ${t('common.sceneKeys')}`);
      if (begun) return;
      begun = true;
      scene.onTime(tick);
      usePlayer(scene);
      // The first picture shows the ski at its hardest, not the start gate.
      const lead = runs.value.runs[0]!.track;
      if (start > 0) scene.seek(start);
      else scene.cue(lead.t[hardestRow(lead)]!);
    }),
  );
}
