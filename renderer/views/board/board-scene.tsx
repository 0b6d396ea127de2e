import { computed, effect, type Signal, untracked } from '@preact/signals';
import type { JSX } from 'preact';
import { inSi } from '../../../core/conditions/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { boardAnswers, boardBends, formOf, type Place } from '../../answers/index.ts';
import { styleOf, usePicture } from '../../kit/index.ts';
import type { EdgeSceneHandle, EdgeSceneInput, ExtraArc } from '../../scene/index.ts';
import { conditions, t, view } from '../../state/index.ts';
import { pageColour } from '../../theme/index.ts';
import { radiusToward, startOf } from './arc-math.ts';
import { ArcPlan } from './arc-plan.tsx';
import { boardCamera } from './camera.ts';
import { guessed, guessPhase, NEUTRAL_RADIUS, place, revealed } from './guess.ts';
import { askedPlace, guessName, layoutRadius, missNow } from './guessing.ts';

/** The pointer may tremble this far, px, and still point. */
const STILL = 6;

const radiusText = (metres: number) => formatQuantity(metres, 'radius', { system: view.value.system }).text;

const theme = computed(() => view.value.theme);

interface Props {
  /** The scene once it is there: what plays. */
  readonly scene: Signal<EdgeSceneHandle | null>;
  onTime(seconds: number, playing: boolean): void;
}

/** The snow: the skis, their arcs and the room's guess. */
export function BoardScene({ scene, onTime }: Props): JSX.Element {
  const { box, flat, again } = usePicture(
    () => import('../../scene/index.ts'),
    ({ createScene, lookHere: deviceSceneOptions }, host) => {
      const made = createScene(host, { kind: 'edge', theme: theme.peek(), ...deviceSceneOptions() });
      made.onTime(onTime);
      const stops = [
        effect(() => made.setTheme(theme.value)),
        effect(() => made.setCamera(guessPhase.value === 'asking' ? 'arc' : boardCamera.value)),
        // The small picture would lie over the longer of two arcs, and show the guessed one close by.
        effect(() => made.setInset(boardAnswers.value.length === 1 && guessPhase.value === 'off')),
        effect(() => {
          const input = sceneInput(boardBends.map(bend => bend.value));
          if (input) made.update(input);
          made.describe(`${sceneWords()}. ${t('common.sceneKeys')}`);
        }),
        effect(() => {
          // The ski waits at the start: standing on its arc it would give the answer away.
          if (guessPhase.value !== 'asking') return;
          made.pause();
          made.seek(0);
        }),
        pointing(made),
      ];
      scene.value = made;
      return {
        canvas: made.canvas,
        end() {
          for (const stop of stops.reverse()) stop();
          scene.value = null;
          made.dispose();
        },
      };
    },
    {
      none: () => t('board.noWebGL'),
      lost: () => t('board.pictureLost'),
      notFetched: () => t('kit.notFetched'),
    },
  );

  if (flat !== null) {
    return (
      <div class="board-snow flat">
        <p role="note">
          {t('board.flatPlan', { reason: flat })}{' '}
          {again && (
            <button type="button" onClick={again}>
              {t('kit.tryAgain')}
            </button>
          )}
        </p>
        <ArcPlan onPoint={pointAt} />
      </div>
    );
  }
  return (
    <div class="board-snow" ref={box}>
      {scene.value === null && <p class="board-waiting">{t('board.layingOut')}</p>}
    </div>
  );
}

/** A point of the snow as the room's guess. */
function pointAt(x: number, y: number): void {
  if (guessPhase.peek() !== 'asking') return;
  const { heading } = startOf(untracked(layoutRadius));
  const radius = radiusToward(heading, x, y);
  if (radius !== null) place(radius);
}

function pointing(scene: EdgeSceneHandle): () => void {
  let from: { x: number; y: number } | null = null;
  const down = (event: PointerEvent) => {
    from = { x: event.clientX, y: event.clientY };
  };
  const up = (event: PointerEvent) => {
    const still = from && Math.hypot(event.clientX - from.x, event.clientY - from.y) < STILL;
    from = null;
    const at = still ? scene.pick(event.clientX, event.clientY) : null;
    if (at) pointAt(at.x, at.y);
  };
  scene.canvas.addEventListener('pointerdown', down);
  scene.canvas.addEventListener('pointerup', up);
  return () => {
    scene.canvas.removeEventListener('pointerdown', down);
    scene.canvas.removeEventListener('pointerup', up);
  };
}

type Bend = ReturnType<(typeof boardBends)[number]['peek']>;

function sceneInput(bends: readonly Bend[]): EdgeSceneInput | null {
  const shown = boardAnswers.value;
  if (shown.length === 0) return null;
  void theme.value;
  const { slope, startSpeed } = inSi(conditions.value, ['slopeDeg', 'speedKmh']);
  const { system } = view.value;
  const phase = guessPhase.value;
  const guess = guessed.value;
  const miss = missNow();
  const skis = (phase === 'off' ? shown : shown.slice(0, askedPlace() + 1)).map(
    ({ ski: one, moment, question, path, slides }, i) => {
      const bend = bends[i];
      const known = revealed(i as Place);
      return {
        form: formOf(one.pair),
        style: styleOf(one.mark),
        edgeAngle: question.edgeAngle,
        bend: bend?.ok ? bend : null,
        // Nothing of the answer may reach the snow before the guess does.
        turnRadius: known ? path : (guess ?? NEUTRAL_RADIUS),
        label: t(slides ? 'board.arcSlides' : 'board.arc', {
          letter: one.mark.letter,
          radius: radiusText(path),
        }),
        ...(known && slides
          ? { slip: (Math.abs(1 / moment.radius - 1 / path) * one.ski.contactLength) / 4 }
          : {}),
        arcShown: known,
      };
    },
  );
  const style = { letter: '', colour: pageColour('--accent'), dash: [0.25, 0.2] };
  const extraArcs: ExtraArc[] = [];
  if (phase !== 'off' && guess !== null) {
    extraArcs.push({ turnRadius: guess, style, label: `${guessName()} ${radiusText(guess)}` });
  }
  // Where the edge lets go, the arc it would carve is dashed beside the way it takes.
  shown.forEach(({ ski: one, moment, slides }, i) => {
    if (!slides || !revealed(i as Place)) return;
    const own = { ...styleOf(one.mark), dash: [0.12, 0.2] };
    extraArcs.push({
      turnRadius: moment.radius,
      style: own,
      label: t('board.ownArc', { letter: one.mark.letter, radius: radiusText(moment.radius) }),
    });
  });
  // Where the ski stands, which way it points and how long a metre is: without them nobody can point at the snow.
  if (phase === 'asking') extraArcs.push(straightOn());
  return {
    slopeAngle: slope,
    skis,
    extraArcs,
    miss:
      phase === 'shown' && miss !== null
        ? { from: askedPlace(), to: skis.length, label: t('board.missed', { miss: radiusText(miss) }) }
        : null,
    speed: startSpeed,
    lengthsIn: system === 'imperial' ? 'ft' : 'm',
    lean: !revealed(0) ? null : shown[0]!.lean,
  };
}

/** A line without a turn, with metres along it while no arc is seen. */
const straightOn = (): ExtraArc => ({
  turnRadius: Infinity,
  style: { letter: '', colour: pageColour('--ink'), dash: [0.5, 0.5] },
  label: t('board.straightOn'),
});

function sceneWords(): string {
  if (guessPhase.value === 'asking') return t('board.waiting');
  return boardAnswers.value
    .filter((_, i) => revealed(i as Place))
    .map(({ ski: one, path, slides }) =>
      t(slides ? 'board.sceneSlides' : 'board.sceneCarves', { name: one.name, radius: radiusText(path) }),
    )
    .join(', ');
}
