import { expect, test } from 'vitest';
import { say } from '../../../../core/language/index.ts';
import { cosineTurn, holdingEdge, holdingSpeed, turnMoment } from '../../../../core/run/index.ts';
import { boardAnswers } from '../../../../renderer/answers/board.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';
import {
  addEntries,
  changeBoard,
  changeConditions,
  choosePreset,
  conditions,
  EMPTY_PROJECT,
  edit,
  load,
  presetChosen,
  SKIER_PRESETS,
  undo,
} from '../../../../renderer/state/index.ts';
import { verdictOf } from '../../../../renderer/views/board/verdict.ts';

const RAD = Math.PI / 180;
const question = {
  turn: cosineTurn(12.2),
  sidecutRadius: 12.2,
  edgeAngle: 50 * RAD,
  speed: 20 / 3.6,
  mass: 60,
  slope: 6 * RAD,
  pastFallLine: 0,
  baseBevel: 0,
  outerShare: 0.7,
  leg: 0.8,
};

/** A value and its unit never part at the end of a line. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

test('it carves up to the speed the balance says, and slides beyond with what to do', () => {
  const ends = 3.6 * holdingSpeed(question);
  expect(plain(say(verdictOf({ question, slides: false })))).toBe(
    `Carves: grip ends at ${ends.toFixed(0)} km/h.`,
  );
  const fast = { ...question, speed: (ends + 11) / 3.6 };
  const more = Math.ceil((holdingEdge(fast)! - fast.edgeAngle) / RAD);
  expect(plain(say(verdictOf({ question: fast, slides: true })))).toBe(
    `Slides: grip ends at ${ends.toFixed(0)} km/h. To carve, slow down 11 or tip ${more}° more.`,
  );
});

test('where no edge angle grips only slowing down is said', () => {
  const wild = { ...question, speed: 25 };
  expect(holdingEdge(wild)).toBeNull();
  expect(say(verdictOf({ question: wild, slides: true }))).toMatch(/To carve, slow down \d+\.$/);
});

test('the board, its verdict and its picture agree: the balance is that of a leg of the skier’s height', () => {
  load(EMPTY_PROJECT);
  edit('Rack', addEntries(demoPairs.map((pair, i) => ({ id: `demo-${i}`, pair, saved: pair }))));
  changeBoard('One ski', { sideBySide: false });
  const [slow] = boardAnswers.value;
  expect(slow!.slides).toBe(false);
  expect(slow!.path).toBe(slow!.moment.radius);
  const { lean, radius } = slow!.moment;
  const { speed, slope, leg } = slow!.question;
  const request = (speed * speed * (1 - (leg! * Math.sin(lean)) / radius)) / radius;
  expect(Math.tan(lean)).toBeCloseTo(request / (9.81 * Math.cos(slope)), 9);
  changeConditions('Height', { heightM: 1.95 });
  expect(boardAnswers.value[0]!.moment.lean).toBeLessThan(lean);
  changeConditions('Speed', { speedKmh: 60 });
  const [fast] = boardAnswers.value;
  expect(fast!.slides).toBe(true);
  // It takes the tightest way that the edge carries, leaning as far as that.
  expect(fast!.path).toBeGreaterThan(fast!.moment.radius);
  expect(fast!.lean).toBeCloseTo(fast!.question.edgeAngle - fast!.question.baseBevel, 9);
  const onPath = turnMoment({ ...fast!.question, turn: { radius: () => fast!.path } });
  expect(onPath.hold).toBeCloseTo(0, 6);
});

test('a preset sets skier, hill and rhythm at once, and undo takes all of it back', () => {
  load(EMPTY_PROJECT);
  expect(presetChosen.value).toBe(SKIER_PRESETS[0]!.id);
  choosePreset('senior-giant-slalom');
  expect(presetChosen.value).toBe('senior-giant-slalom');
  expect(conditions.value).toMatchObject({ massKg: 80, heightM: 1.78, gateSpacingM: 25 });
  changeConditions('Mass', { massKg: 81 });
  expect(presetChosen.value).toBeNull();
  undo();
  undo();
  expect(presetChosen.value).toBe(SKIER_PRESETS[0]!.id);
});
