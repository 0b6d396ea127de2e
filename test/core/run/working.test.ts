import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { type Sentence, say, sayAll } from '../../../core/language/index.ts';
import {
  type ChainQuestion,
  coachWords,
  cosineTurn,
  explainChain,
  holdingEdge,
  holdingRadius,
  holdingSpeed,
  idealRadiusWorking,
  speedCeilingWorking,
  tableTurn,
  terminalSpeedWorking,
  turnMoment,
} from '../../../core/run/index.ts';
import { checkWorking, type Working } from '../../../core/working/index.ts';
import { demoTable } from './demo-table.ts';

const RAD = Math.PI / 180;

const QUESTION: ChainQuestion = {
  turn: cosineTurn(13),
  sidecutRadius: 13,
  edgeAngle: 50 * RAD,
  speed: 9,
  mass: 75,
  slope: 14 * RAD,
  pastFallLine: 30 * RAD,
  baseBevel: 0.5 * RAD,
  outerShare: 0.7,
  leg: 0.9,
};

function agrees(w: Working): void {
  expect(checkWorking(w)).toEqual([]);
  if (w.formula === '') return;
  const scope = Object.fromEntries(w.inputs.map(i => [i.name, i.value]));
  const value = evaluate(w.formula, scope) as number;
  expect(Math.abs(value - w.result.value)).toBeLessThan(1e-9 * (1 + Math.abs(value)));
  expect(w.source).not.toBe('');
}

const question = fc.record({
  edgeAngle: fc.double({ min: 5 * RAD, max: 75 * RAD, noNaN: true }),
  speed: fc.double({ min: 1, max: 25, noNaN: true }),
  slope: fc.double({ min: 0, max: 35 * RAD, noNaN: true }),
  pastFallLine: fc.double({ min: -1.4, max: 1.4, noNaN: true }),
  solved: fc.boolean(),
});

describe('the chain', () => {
  it('every formula, evaluated with its inputs, gives its result', () => {
    fc.assert(
      fc.property(question, q => {
        const turn = q.solved ? tableTurn(demoTable()) : QUESTION.turn;
        const chain = explainChain({ ...QUESTION, ...q, turn });
        expect(chain.map(w => w.key)).toEqual([
          'carve.cosineRadius',
          'run.radius',
          'run.normalForce',
          'run.sidewaysForce',
          'run.lean',
          'run.load',
          'run.angulation',
          'run.hold',
          'run.holdingSpeed',
        ]);
        for (const w of chain) agrees(w);
      }),
    );
    agrees(speedCeilingWorking(13));
    agrees(terminalSpeedWorking({ mass: 80, slope: 0.35, friction: 0.05, airDensity: 1, dragArea: 0.4 }));
    agrees(idealRadiusWorking(8, 13, 15 * RAD, 45 * RAD, -1) as Working);
    expect(idealRadiusWorking(5, 13, 15 * RAD, 0, -1)).toBeNull();
  });
});

describe('what to change', () => {
  it('at the speed, edge or ski it names, the hold is exactly used up', () => {
    fc.assert(
      fc.property(question, q => {
        const request = { ...QUESTION, ...q, turn: q.solved ? tableTurn(demoTable()) : QUESTION.turn };
        const speed = holdingSpeed(request);
        if (speed > 0) expect(turnMoment({ ...request, speed }).hold).toBeCloseTo(0, 7);
        const radius = holdingRadius(request);
        if (Number.isFinite(radius) && radius > 0) {
          expect(turnMoment({ ...request, turn: { radius: () => radius } }).hold).toBeCloseTo(0, 7);
        }
        const edge = holdingEdge(request);
        if (edge !== null) expect(turnMoment({ ...request, edgeAngle: edge }).hold).toBeGreaterThan(-1e-9);
      }),
    );
  });

  const inWords = (sentence: Sentence) => say(sentence).replaceAll('\u00a0', ' ');

  it('says it in words with numbers when the turn does not hold', () => {
    const words = coachWords({ ...QUESTION, edgeAngle: 40 * RAD });
    const speed = 3.6 * holdingSpeed({ ...QUESTION, edgeAngle: 40 * RAD });
    expect(inWords(words.verdict)).toMatch(/40\.0° of edge and 32 km\/h .* the ski slides/);
    expect(inWords(words.changes[0]!)).toContain(`below ${speed.toFixed(0)} km/h`);
    expect(sayAll(words.changes)).toMatch(/More edge/);
    expect(sayAll(words.changes)).toMatch(/Another ski/);
  });

  it('says what is left when it holds', () => {
    const words = coachWords({ ...QUESTION, speed: 6, pastFallLine: 0 });
    expect(inWords(words.verdict)).toMatch(/\d+\.\d° of grip to spare/);
    expect(sayAll(words.stance)).toMatch(/that is the angulation/);
    expect(inWords(words.changes[0]!)).toMatch(/grip ends at \d+ km\/h/);
  });

  it('says it in the reader’s units', () => {
    const { verdict, changes } = coachWords({ ...QUESTION, edgeAngle: 40 * RAD });
    expect(sayAll([verdict, ...changes], { units: 'imperial' })).toMatch(/\smph .*\sft /s);
    expect(sayAll([verdict, ...changes], { units: 'imperial' })).not.toMatch(/km\/h|\d\sm\b/);
  });

  it('admits that more edge cannot help above the ceiling', () => {
    const words = coachWords({ ...QUESTION, speed: 14 });
    expect(sayAll(words.changes)).toMatch(/More edge does not help/);
  });
});
