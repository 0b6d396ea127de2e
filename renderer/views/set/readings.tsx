import type { JSX } from 'preact';
import { NAMED_SNOWS } from '../../../core/carve/index.ts';
import { type Field, reachOf, rowOf, USUAL } from '../../../core/conditions/index.ts';
import { decimal } from '../../../core/units/index.ts';
import {
  checkOf,
  enteredNow,
  estimated,
  type QuickestAnswer,
  setRuns,
  type TurnModel,
  turnModel,
} from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { PairBadge, Quantity, Segments } from '../../kit/index.ts';
import {
  allInWords,
  type Course,
  changeCourse,
  chosenPairs,
  conditions,
  course,
  project,
  slope,
  t,
} from '../../state/index.ts';
import { Waiting } from './waiting.tsx';

export function SetReadings(): JSX.Element {
  return (
    <>
      <Pick />
      <HillAndStart />
      <WhatIf />
      <p class="reading-hint">{t('set.noAdvice')}</p>
    </>
  );
}

/** The answer first: which pair, its time and how far ahead it is, whether the rules let it race, and why. */
function Pick(): JSX.Element {
  const answer = setRuns.value.value;
  if (!answer || answer.fault) {
    return (
      <section class="reading-group pick">
        <h2>{t('set.thePick')}</h2>
        <Waiting />
        {chosenPairs.value.length === 0 && <p class="reading-hint">{t('set.choosePairs')}</p>}
      </section>
    );
  }
  const stale = setRuns.value.running || estimated.value !== null;
  return (
    <section class={stale ? 'reading-group pick stale' : 'reading-group pick'} aria-live="polite">
      <h2>{t(headingOf(answer))}</h2>
      <Picked answer={answer} />
      <p>{allInWords(answer.because)}</p>
      {stale && <p class="reading-hint">{t('set.estimating')}</p>}
      <p class="reading-hint">{modelWords()}</p>
    </section>
  );
}

const headingOf = ({ pick, pairs }: QuickestAnswer) =>
  pick !== null && pairs.length > 1 ? 'set.thePick' : pairs.length === 1 ? 'set.thePair' : 'set.noPick';

function Picked({ answer }: { answer: QuickestAnswer }): JSX.Element | null {
  const { pick, pairs } = answer;
  const reported = pairs.find(({ id }) => id === pick) ?? (pairs.length === 1 ? pairs[0] : null);
  if (!reported) return null;
  const entry = project.value.rack.find(each => each.id === reported.id);
  const mark = chosenPairs.value.find(each => each.id === reported.id)?.mark;
  const { verdict } = entry ? checkOf(entry.pair, course.value.discipline) : { verdict: 'unknown' };
  return (
    <>
      <p class="pick-name">
        {mark && <PairBadge mark={mark} />} {entry?.pair.name}
      </p>
      <p class="pick-time">
        {t('set.seconds', {
          seconds: decimal(estimated.value?.get(reported.id) ?? reported.seconds, 2),
          plusMinus: decimal(reported.secondsPlusMinus, 2),
        })}
      </p>
      <p class="reading-note">
        {t('set.legal', { verdict, category: t(`category.${course.value.category}`) })}
      </p>
    </>
  );
}

function modelWords(): string {
  const { byCosine, pairs } = enteredNow.value;
  if (turnModel.value === 'cosine') return t('set.model.cosine');
  const [first] = byCosine;
  if (!first) return t('set.model.bent');
  const who = t('set.model.who', { count: byCosine.length, name: first.name, why: first.why });
  return byCosine.length === pairs.length ? t('set.model.allCosine', { who }) : t('set.model.mixed', { who });
}

/** Least and most of a control, and its step. */
function rangeOf(field: Field) {
  const [min, max] = reachOf(field);
  return { min, max, step: rowOf(field).step };
}

type Start = 'rest' | 'speed' | 'pace';

function HillAndStart(): JSX.Element {
  const { hardnessNPerMm3 } = conditions.value;
  const snow = NAMED_SNOWS.find(each => each.hardnessNPerMm3 === hardnessNPerMm3);
  const { slopeDeg, speedKmh, keepSpeed, onProfile, greatestEdgeDeg } = course.value;
  const { ground, groundFile } = slope.value;
  const change = (label: string, part: Partial<Course>, key?: string) =>
    changeCourse(label, before => ({ ...before, ...part }), key);
  const start: Start = keepSpeed ? 'pace' : speedKmh === 0 ? 'rest' : 'speed';
  return (
    <section class="reading-group set-inputs" aria-label={t('set.hillAndStart')}>
      <h2>{t('set.hillAndStart')}</h2>
      {(onProfile || (ground === 'file' && groundFile)) && (
        <Segments
          label={t('set.hill')}
          value={onProfile ? 'profile' : 'even'}
          options={[
            { value: 'even', label: t('set.evenSlope') },
            { value: 'profile', label: t('set.measuredSlope') },
          ]}
          onInput={value => change(t('set.hillStep'), { onProfile: value === 'profile' })}
        />
      )}
      {onProfile ? (
        <p class="reading-hint">
          {groundFile ? t('set.onProfileOf', { name: groundFile.name }) : t('set.noProfile')}
        </p>
      ) : (
        <Quantity
          label={t('condition.slope')}
          measure="angleDeg"
          value={slopeDeg}
          {...rangeOf('courseSlopeDeg')}
          onInput={value => change(t('set.slopeStep'), { slopeDeg: value }, 'courseSlopeDeg')}
        />
      )}
      <Segments
        label={t('set.start')}
        value={start}
        options={(['rest', 'speed', 'pace'] as const).map(value => ({
          value,
          label: t(`set.start.${value}`),
          title: t(`set.startTitle.${value}`),
        }))}
        onInput={value =>
          change(t('set.startStep'), {
            keepSpeed: value === 'pace',
            speedKmh: value === 'rest' ? 0 : speedKmh || USUAL.courseSpeedKmh,
          })
        }
      />
      {start !== 'rest' && (
        <Quantity
          label={t(start === 'pace' ? 'set.pace' : 'condition.startSpeed')}
          measure="speedKmh"
          value={speedKmh}
          {...rangeOf('courseSpeedKmh')}
          onInput={value => change(t('set.speedStep'), { speedKmh: value }, 'courseSpeedKmh')}
        />
      )}
      <Segments
        label={t('set.turnBy')}
        value={turnModel.value}
        options={[
          { value: 'bent', label: t('set.bentSki') },
          { value: 'cosine', label: t('set.cosineRule') },
        ]}
        onInput={value => {
          turnModel.value = value as TurnModel;
        }}
      />
      <ConditionControl field="hardnessNPerMm3" note={snow && t(`snow.${snow.name}`)} />
      <Quantity
        label={t('condition.edgeMost')}
        measure="angleDeg"
        value={greatestEdgeDeg}
        {...rangeOf('courseEdgeMostDeg')}
        onInput={value => change(t('set.edgeMostStep'), { greatestEdgeDeg: value }, 'courseEdgeMostDeg')}
      />
    </section>
  );
}

/** Skier, wax and suit: the times follow at once from what each is worth, and are solved a moment later. */
function WhatIf(): JSX.Element {
  return (
    <section class="reading-group set-inputs" aria-label={t('set.whatIf')}>
      <h2>{t('set.whatIf')}</h2>
      <ConditionControl field="massKg" />
      <ConditionControl field="pushBodyWeights" />
      <ConditionControl field="legSpeedMps" />
      <ConditionControl field="friction" />
      <ConditionControl field="dragAreaM2" />
      <ConditionControl field="clearanceM" />
    </section>
  );
}
