import type { JSX } from 'preact';
import { NAMED_SNOWS } from '../../../core/carve/index.ts';
import { type Field, reachOf, rowOf } from '../../../core/conditions/index.ts';
import { enteredNow, ranking, scope, type TurnModel, turnModel } from '../../answers/index.ts';
import { ConditionControl } from '../../controls/index.ts';
import { PairBadge, Quantity, Segments } from '../../kit/index.ts';
import {
  allInWords,
  type Course,
  changeCourse,
  chosenPairs,
  conditions,
  course,
  inWords,
  project,
  view,
} from '../../state/index.ts';
import { sureness } from './sureness.ts';

export function SetReadings(): JSX.Element {
  return (
    <>
      <Pick />
      <Inputs />
      <p class="reading-hint">
        An idealised skier on one line: no advice on how fast or where to ski, and no binding setting. Only
        the rulebook in force and the equipment controller decide what may be raced.
      </p>
    </>
  );
}

/** The pick, why, and how sure it is. */
function Pick(): JSX.Element {
  const answer = ranking.value.value;
  const asked = enteredNow.value;
  if (!answer) {
    return (
      <section class="reading-group pick">
        <h2>The pick</h2>
        <p class="reading-hint">
          {asked.waiting > 0
            ? 'The pairs are being bent into the snow.'
            : scope.value === 'chosen' && chosenPairs.value.length === 0
              ? 'Choose pairs in the rack to have one picked.'
              : (ranking.value.error ??
                (asked.pairs.length === 0 || course.value.gates.length < 2
                  ? 'Two gates and a pair are needed.'
                  : 'The pairs are on their way through the gates.'))}
        </p>
      </section>
    );
  }
  const { because, pairs, flips, sure } = answer.ranking;
  const id = answer.pairs[pairs[0].index].id;
  const chosen = chosenPairs.value.find(each => each.id === id);
  const name = project.value.rack.find(each => each.id === id)?.pair.name ?? pairs[0].name;
  return (
    <section
      class={ranking.value.running ? 'reading-group pick stale' : 'reading-group pick'}
      aria-live="polite"
    >
      <h2>{sure === 'only one pair' ? 'The pair' : 'The pick'}</h2>
      <p class="pick-name">
        {chosen && <PairBadge mark={chosen.mark} />} {name}
      </p>
      <p>{allInWords(because)}</p>
      <h3>How sure?</h3>
      <p>{sureness(sure, flips.length, view.value.system)}</p>
      {flips.length > 0 && (
        <ul class="flips">
          {flips.map(({ change, pick }) => (
            <li key={`${inWords(change)} ${pick}`}>
              {inWords(change)}: {pick} first
            </li>
          ))}
        </ul>
      )}
      <p class="reading-hint">{modelWords()}</p>
    </section>
  );
}

function modelWords(): string {
  const { byCosine, pairs } = enteredNow.value;
  if (turnModel.value === 'cosine')
    return 'Turn radius by the cosine rule: rigid snow, whatever the ski’s stiffness.';
  const [first] = byCosine;
  if (!first) return 'Turn radius from each ski bent into its groove, solved on this snow.';
  const who =
    byCosine.length === 1
      ? `${first.name} (${first.why})`
      : `${byCosine.length} pairs (${first.name} ${first.why})`;
  return byCosine.length === pairs.length
    ? `Turn radius by the cosine rule: ${byCosine.length === 1 ? who : 'no pair has a solved groove'}.`
    : `Turn radius from each ski bent into its groove, but by the cosine rule for ${who}; the two are not quite alike.`;
}

/** Least and most of a control, and its step. */
function rangeOf(field: Field) {
  const [min, max] = reachOf(field);
  return { min, max, step: rowOf(field).step };
}

function Inputs(): JSX.Element {
  const { hardnessNPerMm3 } = conditions.value;
  const { slopeDeg, speedKmh, keepSpeed, greatestEdgeDeg } = course.value;
  const change = (label: string, part: Partial<Course>, key: string) =>
    changeCourse(label, before => ({ ...before, ...part }), key);
  return (
    <section class="reading-group set-inputs" aria-label="Slope, skier and snow">
      <h2>Slope, skier, snow</h2>
      <Quantity
        label="Slope"
        measure="angleDeg"
        value={slopeDeg}
        {...rangeOf('courseSlopeDeg')}
        onInput={value => change('Slope of the set', { slopeDeg: value }, 'set slope')}
      />
      <Quantity
        label={keepSpeed ? 'Speed, kept' : 'Start speed'}
        measure="speedKmh"
        value={speedKmh}
        {...rangeOf('courseSpeedKmh')}
        onInput={value => change('Speed on the set', { speedKmh: value }, 'set speed')}
      />
      <label class="check-line">
        <input
          type="checkbox"
          checked={keepSpeed}
          onChange={event => {
            const keep = event.currentTarget.checked;
            changeCourse('Keep the speed', before => ({ ...before, keepSpeed: keep }));
          }}
        />
        keep the speed all the way
      </label>
      <ConditionControl field="massKg" />
      <Quantity
        label="Greatest edge angle"
        measure="angleDeg"
        value={greatestEdgeDeg}
        {...rangeOf('courseEdgeMostDeg')}
        onInput={value => change('Greatest edge angle', { greatestEdgeDeg: value }, 'greatest edge')}
      />
      <Segments
        label="Turn"
        value={turnModel.value}
        options={[
          { value: 'bent', label: 'bent ski' },
          { value: 'cosine', label: 'cosine rule' },
        ]}
        onInput={value => {
          turnModel.value = value as TurnModel;
        }}
      />
      {turnModel.value === 'bent' && (
        <ConditionControl
          field="hardnessNPerMm3"
          note={NAMED_SNOWS.find(each => each.hardnessNPerMm3 === hardnessNPerMm3)?.name}
        />
      )}
    </section>
  );
}
