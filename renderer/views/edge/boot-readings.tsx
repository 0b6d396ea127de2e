import type { JSX } from 'preact';
import {
  angulationWorking,
  bootMomentWorking,
  edgeAngleLostWorking,
  footBedWorking,
  freeAngulationWorking,
  pushWorking,
  solvedBootMomentWorking,
  solvedFreeAngulationWorking,
} from '../../../core/boot/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { type BootOfPair, bootOf } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { type ChosenPair, conditions, DEFAULT_CONDITIONS, view } from '../../state/index.ts';

/** What the boot carries: the moment, the angulation at which there is none, and the edge angle it costs. */
export function BootReadings({ pair }: { pair: ChosenPair }): JSX.Element | null {
  const boot = bootOf(pair);
  if (!boot) return null;
  const { question, answer, balance } = boot;
  const { system } = view.value;
  const degrees = (angle: number) => formatQuantity(angle, 'angle').text;
  const height = question.standingHeight + question.bootSoleHeight;
  const tall = formatQuantity(height, 'station', { system }).text;
  const solved = answer.solvedMoment;
  const does = answer.moment < 0 ? 'tips the ski further' : 'flattens the ski';
  const stiffness = conditions.value.bootStiffnessNmPerDeg;
  const spring = formatQuantity(stiffness, 'bootStiffnessNmPerDeg', { system }).text;
  return (
    <section class="reading-group" aria-label="Boot">
      <h2>Boot</h2>
      <Reading
        size="small"
        label="Moment it carries"
        measure="moment"
        value={answer.moment}
        note={
          solved === null
            ? `${does}, by the force at the waist`
            : `${does}, by the force at the waist; where the snow presses, ${formatQuantity(solved, 'moment', { system }).text}`
        }
        working={() => [...balance.explain('run.lean'), ...momentWorkings(boot)]}
      />
      <Reading
        size="small"
        label="Carries nothing at"
        measure="angle"
        value={answer.freeAngulation}
        note={`of angulation, now ${degrees(answer.angulation)}; foot bed at ${tall}${question.heightsStated ? '' : ', not measured'}`}
        working={() =>
          [
            footBedWorking(question),
            freeAngulationWorking(question),
            solvedFreeAngulationWorking(question) ?? [],
          ].flat()
        }
      />
      <Reading
        size="small"
        label={answer.edgeAngleLost < 0 ? 'Edge angle gained in it' : 'Edge angle lost in it'}
        measure="angle"
        value={Math.abs(answer.edgeAngleLost)}
        note={`at ${spring}${stiffness === DEFAULT_CONDITIONS.bootStiffnessNmPerDeg ? ', from memory; set it under Boot' : ''}`}
        working={() => [...momentWorkings(boot), edgeAngleLostWorking(question)]}
      />
    </section>
  );
}

function momentWorkings({ question }: BootOfPair): Working[] {
  const solved = solvedBootMomentWorking(question);
  return [
    angulationWorking(question),
    pushWorking(question),
    footBedWorking(question),
    bootMomentWorking(question),
    ...(solved ? [solved] : []),
  ];
}
