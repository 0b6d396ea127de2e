import { beforeEach, describe, expect, it } from 'vitest';
import { wallStrengthOf } from '../../../core/carve/index.ts';
import { say } from '../../../core/language/index.ts';
import {
  board,
  changeBoard,
  changeConditions,
  changeCourse,
  changeSlope,
  course,
  DEFAULT_BOARD,
  DEFAULT_SLOPE,
  draftOf,
  EMPTY_PROJECT,
  load,
  NO_COURSE,
  project,
  projectFrom,
  redo,
  settingsNotTaken,
  settle,
  slope,
  undo,
  undoLabel,
} from '../../../renderer/state/index.ts';

beforeEach(() => load(EMPTY_PROJECT));

const read = (change: object) =>
  projectFrom(JSON.stringify({ ...JSON.parse(draftOf(project.value)), ...change }))!;

describe('the run and the board in the project', () => {
  it('are undone and redone', () => {
    changeSlope('Ground', { ground: 'roller' });
    changeBoard('Skis', { sideBySide: false });
    undo();
    expect(board.value.sideBySide).toBe(true);
    expect(undoLabel.value).toBe('Ground');
    undo();
    expect(slope.value).toBe(DEFAULT_SLOPE);
    redo();
    expect(slope.value.ground).toBe('roller');
  });

  it('take a drag as one step', () => {
    const drawn = (deg: number) => [0, 1, 2].map(at => ({ at, deg: at === 1 ? deg : 0 }));
    for (const deg of [61, 62, 63]) changeSlope('Points', { drawn: drawn(deg) }, 'drawn');
    settle();
    changeSlope('Points', { drawn: drawn(70) }, 'drawn');
    undo();
    expect(slope.value.drawn[1]!.deg).toBe(63);
    undo();
    expect(slope.value.drawn).toBe(DEFAULT_SLOPE.drawn);
  });

  it('the strength of the wall of snow follows the hardness until it is said, and is kept then', () => {
    expect(project.value.conditions.wallStrengthKPa).toBeUndefined();
    expect(wallStrengthOf(project.value.conditions)).toBeCloseTo(600e3, 3);
    changeConditions('Hardness', { hardnessNPerMm3: 30 });
    expect(wallStrengthOf(project.value.conditions)).toBeGreaterThan(1.5e6);
    changeConditions('Wall', { wallStrengthKPa: 900 });
    expect(wallStrengthOf(read({}).conditions)).toBeCloseTo(900e3, 3);
    changeConditions('Wall', { wallStrengthKPa: undefined });
    expect(read({}).conditions).not.toHaveProperty('wallStrengthKPa');
    const conditions = { ...project.value.conditions, wallStrengthKPa: 1 };
    const odd = JSON.stringify({ ...JSON.parse(draftOf(project.value)), conditions });
    expect(settingsNotTaken(odd, projectFrom(odd)!).map(each => say(each))).toEqual([
      expect.stringContaining('Strength of the wall of snow'),
    ]);
  });

  it('come back from a draft as they were', () => {
    const table = { name: 'hill.csv', text: '0,0\n100,-20' };
    changeSlope('Ground', { ground: 'file', groundFile: table, shape: 'trapezoid', ghost: null });
    changeSlope('Points', { drawn: [0, 1, 2].map(at => ({ at, deg: 10 * at })) });
    changeBoard('Skis', { sideBySide: false });
    const kept = read({});
    expect(kept.slope).toEqual(project.value.slope);
    expect(kept.board).toEqual(project.value.board);
  });

  it('keep the set’s own slope and speed apart from the rest, a drag as one step, into the draft', () => {
    for (const slopeDeg of [18, 17, 16]) changeCourse('Slope', now => ({ ...now, slopeDeg }), 'set slope');
    settle();
    changeCourse('Keep', now => ({ ...now, keepSpeed: false, gateWidthM: 5, category: 'U14 boys' }));
    expect(project.value.conditions).toBe(EMPTY_PROJECT.conditions);
    expect(read({}).course).toEqual(project.value.course);
    undo();
    undo();
    expect(course.value.slopeDeg).toBe(NO_COURSE.slopeDeg);
    const gates = [{ label: '1', x: 1, y: 9, colour: null, turn: null }, { label: 2 }, null];
    expect(
      read({
        course: {
          name: 'x',
          slopeDeg: 88,
          speedKmh: 'fast',
          gateWidthM: -1,
          category: 'pros',
          inFile: 3,
          comments: [3],
          gates,
        },
      }).course,
    ).toEqual({ ...NO_COURSE, name: 'x', gates: gates.slice(0, 1) });
    expect(read({ course: 7 }).course).toEqual(NO_COURSE);
    const noted = { ...gates[0], others: [['notes', 'ice']] };
    expect(read({ course: { ...NO_COURSE, gates: [noted], inFile: 'gate' } }).course).toMatchObject({
      gates: [noted],
      inFile: 'gate',
    });
  });

  it('drop what a draft should not hold, value by value', () => {
    const kept = read({
      slope: {
        ...DEFAULT_SLOPE,
        ground: 'moon',
        programme: 'banked',
        drawn: [0, 2, 1].map(at => ({ at, deg: 0 })),
        groundFile: { name: 1 },
        ghost: 'gone',
      },
      board: { skis: ['gone', 4], sideBySide: 'yes' },
    });
    expect(kept.slope).toEqual({ ...DEFAULT_SLOPE, programme: 'banked' });
    expect(kept.board).toEqual(DEFAULT_BOARD);
    expect(read({ slope: 3, board: null }).slope).toEqual(DEFAULT_SLOPE);
  });

  it('say by name which settings of a draft were not taken up, and what was found', () => {
    const reported = (change: object) => {
      const draft = JSON.stringify({ ...JSON.parse(draftOf(project.value)), ...change });
      return settingsNotTaken(draft, projectFrom(draft)!).map(each => say(each));
    };
    expect(reported({})).toEqual([]);
    expect(reported({ conditions: { massKg: 4000, heightM: 1.7, friction: null } })).toEqual([
      'Mass with equipment (4000 found)',
      'Friction on snow (null found)',
    ]);
    expect(
      reported({
        slope: { ...DEFAULT_SLOPE, ground: 'moon', ghost: 'gone', drawn: Array(9).fill({ at: 0, deg: 1 }) },
        course: { ...NO_COURSE, slopeDeg: 88 },
        view: { ...EMPTY_PROJECT.view, theme: 'pink', page: 'squad' },
        dueAfter: { edgeDays: 0, waxDays: 2 },
      }),
    ).toEqual([
      'Ground ("moon" found)',
      'Drawn edge angle',
      'Slope of the set (88 found)',
      'Days until edges are due (0 found)',
      'Look ("pink" found)',
    ]);
    expect(settingsNotTaken('{', EMPTY_PROJECT)).toEqual([]);
  });

  it('take conditions from where an earlier layout had them', () => {
    const earlier = {
      clearanceM: 0.4,
      traverseDeg: 70,
      limits: { pushBodyWeights: 3.5, edgeDeg: 66, angulationDeg: 35 },
    };
    const { conditions } = read({ conditions: { massKg: 61 }, slope: { ...DEFAULT_SLOPE, ...earlier } });
    expect(conditions).toEqual({
      ...EMPTY_PROJECT.conditions,
      massKg: 61,
      clearanceM: 0.4,
      traverseDeg: 70,
      pushBodyWeights: 3.5,
      edgeMostDeg: 66,
      angulationMostDeg: 35,
    });
  });
});
