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
import type { Working } from '../../../core/working/index.ts';
import { type BootOfPair, bootOf } from '../../answers/index.ts';
import { Reading } from '../../kit/index.ts';
import { type ChosenPair, conditions, DEFAULT_CONDITIONS, t } from '../../state/index.ts';

/** What the boot carries: the moment, the angulation at which there is none, and the edge angle it costs. */
export function BootReadings({ pair }: { pair: ChosenPair }): JSX.Element | null {
  const boot = bootOf(pair);
  if (!boot) return null;
  const { question, answer, balance } = boot;
  const way = answer.moment < 0 ? 'less' : 'more';
  const solved = answer.solvedMoment;
  const stiffness = conditions.value.bootStiffnessNmPerDeg;
  return (
    <section class="reading-group" aria-label={t('edge.sheet.boot')}>
      <h2>{t('edge.sheet.boot')}</h2>
      <Reading
        size="small"
        label={t('edge.momentCarried')}
        measure="moment"
        value={answer.moment}
        note={
          solved === null
            ? t('edge.momentDoes', { way })
            : t('edge.momentDoesPressed', { way, moment: { quantity: 'moment', value: solved } })
        }
        working={() => [...balance.explain('run.lean'), ...momentWorkings(boot)]}
      />
      <Reading
        size="small"
        label={t('edge.carriesNothingAt')}
        measure="angle"
        value={answer.freeAngulation}
        note={t(question.heightsStated ? 'edge.angulationNow' : 'edge.angulationNowUnmeasured', {
          angulation: { quantity: 'angle', value: answer.angulation },
          height: { quantity: 'station', value: question.standingHeight + question.bootSoleHeight },
        })}
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
        label={answer.edgeAngleLost < 0 ? t('edge.angleGained') : t('edge.angleLost')}
        measure="angle"
        value={Math.abs(answer.edgeAngleLost)}
        note={t(
          stiffness === DEFAULT_CONDITIONS.bootStiffnessNmPerDeg ? 'edge.springUsual' : 'edge.springSet',
          { spring: { quantity: 'bootStiffnessNmPerDeg', value: stiffness } },
        )}
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
