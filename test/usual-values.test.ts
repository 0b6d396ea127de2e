import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { beforeEach, describe, expect, test } from 'vitest';
import { type Field, fieldsOf, inSi, reachOf, rowOf, type Said, USUAL } from '../core/conditions/index.ts';
import { rhythmicSet } from '../core/course/index.ts';
import { languages, say } from '../core/language/index.ts';
import { type Pair, skiOf } from '../core/pair/index.ts';
import { sidecut } from '../core/shape/index.ts';
import { conditionHelp, saidBy } from '../main/calc/condition-options.ts';
import { boardAnswers } from '../renderer/answers/board.ts';
import { runPlan } from '../renderer/answers/jobs/run-plan.ts';
import { setJobs } from '../renderer/answers/jobs/set-jobs.ts';
import { request as askedOfGroove } from '../renderer/answers/request.ts';
import { runRequests } from '../renderer/answers/runs.ts';
import { setQuestion } from '../renderer/answers/set-question.ts';
import { conditionProps } from '../renderer/controls/condition.tsx';
import {
  addEntries,
  asUsual,
  type ConditionField,
  changeConditions,
  changeCourse,
  changeSlope,
  chooseOnly,
  conditions,
  draftOf,
  EMPTY_PROJECT,
  edit,
  load,
  NO_COURSE,
  project,
  projectFrom,
} from '../renderer/state/index.ts';
import { RhythmControls } from '../renderer/views/slope/rhythm-controls.tsx';
import { SkierControls } from '../renderer/views/slope/skier-controls.tsx';
import { file, json, larch, run, write } from './main/calc/drive.ts';

/** Without a stiffness, so that page, board and command line all turn by the cosine rule and nothing has to be bent. */
const { bending: _, torsion: __, ...rigid } = larch;
const pair = rigid as unknown as Pair;
const pairFile = await write('rigid.pair.json', rigid);
const ski = skiOf(pair);

beforeEach(() => {
  load(EMPTY_PROJECT);
  edit('Open', now => chooseOnly(['one'])(addEntries([{ id: 'one', pair, saved: pair }])(now)));
});

const summaryOf = () => {
  const answer = runPlan(runRequests.value[0]!.plan);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem));
  return answer;
};

describe('with nothing set, the same question has the same answer', () => {
  test('down the hill: Slope and `run`', async () => {
    const { track } = summaryOf();
    const reported = await json('run', pairFile);
    const { summary } = track;
    expect(reported.seconds).toBeCloseTo(summary.seconds, 9);
    expect(reported.distanceM).toBeCloseTo(summary.distance, 6);
    expect(reported.endSpeedKmh).toBeCloseTo(summary.endSpeed * 3.6, 6);
    expect(reported.maxLoadBodyWeights).toBeCloseTo(summary.maxLoadBodyWeights, 6);
    expect(reported.minHoldDeg).toBeCloseTo((summary.minHold * 180) / Math.PI, 6);
    expect(reported.wallUsed).toBeCloseTo(summary.maxWall!, 6);
  });

  test('from gate to gate: Slope and `rhythm`', async () => {
    changeSlope('Turns', { programme: 'rhythm' });
    const { rhythm } = summaryOf();
    const reported = await json('rhythm', pairFile);
    expect(reported.secondsPerGate).toBeCloseTo(rhythm!.secondsPerGate, 6);
    expect(reported.meanSpeedKmh).toBeCloseTo(rhythm!.meanSpeed * 3.6, 5);
  });

  test('at the fall line: the board asks with the skier, the hill and the speed of Slope and `run`', async () => {
    const { question, moment } = boardAnswers.value[0]!;
    const { plan } = runRequests.value[0]!;
    expect(plan.programme).toMatchObject({ kind: 'linked', peakEdge: question.edgeAngle });
    expect(plan.ground).toEqual({ kind: 'even', angle: question.slope });
    expect(question).toMatchObject({
      mass: plan.mass,
      speed: plan.startSpeed,
      outerShare: plan.outerShare,
      baseBevel: plan.baseBevel,
    });
    // Bent a tenth of the longest leg where a turn is stood.
    expect(question.leg).toBeCloseTo(0.9 * plan.legLongest, 12);
    const { samples } = await json('run', pairFile);
    expect(samples[0].speedKmh).toBeCloseTo(question.speed * 3.6, 6);
    const steepest = samples.reduce((a: { edgeDeg: number }, b: { edgeDeg: number }) =>
      Math.abs(b.edgeDeg) > Math.abs(a.edgeDeg) ? b : a,
    );
    expect(Math.abs(steepest.edgeDeg)).toBeCloseTo((question.edgeAngle * 180) / Math.PI, 1);
    expect(steepest.radiusM / moment.radius).toBeCloseTo(1, 2);
  });

  test('in the groove: Edge, the board’s ski and `carve`', async () => {
    const { points } = await json('carve', file);
    const { edgeAngle, load: force, hardness, fore, rebound } = askedOfGroove.value;
    const same = points.find((each: { edgeDeg: number }) => each.edgeDeg === conditions.value.edgeDeg);
    expect(same).toMatchObject({
      loadN: force,
      hardnessNPerMm3: hardness / 1e9,
      reboundMm: rebound! * 1e3,
    });
    expect(fore).toBe(0);
    expect(boardAnswers.value[0]!.question.edgeAngle).toBe(edgeAngle);
  });

  test.each([
    ['SL', 8, 2.4],
    ['GS', 20, 5],
  ] as const)('on a set of %s gates: Set and `set`', async (discipline, spacing, offset) => {
    const gates = rhythmicSet(4, spacing, offset);
    changeCourse('Open', before => ({ ...before, ...asUsual(before, discipline), gates }));
    const { hardness } = inSi(USUAL, ['hardnessNPerMm3']);
    const press = { contactLength: ski.contactLength, hardness };
    const turn = { sidecutRadius: sidecut(ski).radius, press };
    const asked = {
      ...setQuestion.value,
      rigidAsked: true,
      pairs: [{ id: 'a', pair, turn, failedRules: [] }],
    };
    const [ranked] = setJobs.quickestRuns(asked, () => {}).pairs;
    const told = await json(
      'set',
      pairFile,
      '--gates',
      '4',
      '--spacing',
      `${spacing}`,
      '--offset',
      `${offset}`,
      '--turn',
      'cosine',
    );
    expect(told.pairs[0].seconds).toBeCloseTo(ranked!.seconds, 6);
    expect(told.pairs[0].secondsPlusMinus).toBeCloseTo(ranked!.secondsPlusMinus, 6);
    expect(told.pairs[0].neededEdgeDeg).toBeCloseTo((ranked!.neededEdge * 180) / Math.PI, 6);
    expect(told.pairs[0].minHoldDeg).toBeCloseTo((ranked!.leastGrip * 180) / Math.PI, 6);
    expect(NO_COURSE.discipline).toBe('SL');
  });

  test('and with the height set: legs follow from it on the page and on the command line', async () => {
    changeConditions('Height', { heightM: 1.9 });
    const reported = await json('run', pairFile, '--height', '1.9');
    expect(reported.minLegM).toBeCloseTo(summaryOf().track.summary.minLeg, 6);
  });
});

/**
 * Adding an input takes a row of the table, its label in each language, and the formula that reads it. Everything here
 * is asked of every row there is, so that a new one is asked it too.
 */
describe('a row of the table is all that an input needs', () => {
  const fields = Object.keys(USUAL) as (keyof Said)[];
  const carried = Object.keys(EMPTY_PROJECT.conditions) as ConditionField[];

  test.each(fields)('%s has a label in every language', field => {
    for (const language of Object.values(languages)) {
      expect(say({ key: rowOf(field).label }, { language }).length).toBeGreaterThan(1);
    }
  });

  test.each(carried)('%s has a control, is kept in a draft and is computed with in SI', field => {
    const { measure, si } = rowOf(field);
    const [least, most] = reachOf(field);
    const props = conditionProps(field);
    expect(props).toMatchObject({ measure, min: least, max: most, value: conditions.value[field] });
    props.onInput(most);
    expect(project.value.conditions[field]).toBe(most);
    expect(projectFrom(draftOf(project.value))!.conditions[field]).toBe(most);
    expect(inSi(conditions.value, [field])).toHaveProperty(si);
  });

  test.each(fields.filter(field => rowOf(field).option !== undefined))('%s is an option', field => {
    const { option, least, most, usual } = rowOf(field);
    const help = conditionHelp([field]);
    expect(help).toContain(`--${option}`);
    expect(help).toContain(`${least} to ${most}`);
    expect(help).toMatch(new RegExp(`; (${usual}|groomed) unless given$`));
    expect(saidBy({ [option!]: `${most}` }, [field])).toEqual({ [field]: most });
    expect(() => saidBy({ [option!]: `${most + 1}` }, [field])).toThrow(
      `--${option}: "${most + 1}" is not accepted`,
    );
  });

  test('Slope shows every row about the skier and the gates', () => {
    const html = renderToString(h('div', {}, h(SkierControls, {}), h(RhythmControls, {})));
    for (const field of fieldsOf('body', 'glide', 'gates', 'pole', 'limits')) {
      // The air is chosen by its altitude.
      const label = field === 'airDensity' ? 'Altitude' : say({ key: rowOf(field).label });
      expect(html).toContain(`>${label}</label>`);
    }
  });

  test('a command tells, reads and checks the rows of the groups it takes', async () => {
    const { out } = await run(['run', '--help']);
    const taken: Field[] = fieldsOf(
      'hill',
      'start',
      'turns',
      'body',
      'legSpan',
      'glide',
      'legs',
      'model',
      'wall',
    );
    for (const field of taken) expect(out).toContain(`\n  --${rowOf(field).option} `);
    expect((await run(['run', pairFile, '--friction', '0.7'])).err).toBe(
      '--friction: "0.7" is not accepted; give 0 to 0.5\n',
    );
  });
});
