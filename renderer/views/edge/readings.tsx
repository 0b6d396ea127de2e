import type { JSX } from 'preact';
import {
  biteAngle,
  biteAngleWorking,
  cosineRadiusWorking,
  midSkiTravel,
  partRadiusWorking,
  penetrationWorking,
  travelWorking,
  turnRadiusWorking,
  twistWorking,
} from '../../../core/carve/index.ts';
import { shapeWorkings } from '../../../core/shape/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { asked, carvingOf, faultOf, grooveOf, rigidOf, turnOf, unbendable } from '../../answers/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { activePair, type ChosenPair, chosenPairs, perPair, ski, t } from '../../state/index.ts';
import { BootReadings } from './boot-readings.tsx';
import { StaleWhileSolving } from './stale-while-solving.tsx';
import { whyThisTurn } from './why.ts';

const radiusWorkings = perPair(pair =>
  shapeWorkings(ski(pair)).filter(each => ['shape.depth', 'shape.radius'].includes(each.key)),
);

export function EdgeReadings(): JSX.Element | null {
  const active = activePair.value;
  if (!active) return null;
  return (
    <StaleWhileSolving class="edge-readings">
      <PairReadings
        label={t('edge.turnRadius')}
        measure="radius"
        activeId={active.id}
        rows={chosenPairs.value.map(pair => ({
          id: pair.id,
          mark: pair.mark,
          of: pair.name,
          value: turnOf(pair).radius,
          why: faultOf(pair) ?? t('edge.solvingGroove'),
          note: pair.id === active.id ? whyThisTurn(pair) : unbendable(pair) ? t('edge.ruleOnly') : undefined,
          working: () => turnWorkings(pair),
        }))}
      />
      <OwnReadings pair={active} />
      <BootReadings pair={active} />
    </StaleWhileSolving>
  );
}

function turnWorkings(pair: ChosenPair): readonly Working[] {
  const solved = grooveOf(pair);
  const rule = [...radiusWorkings(pair.pair), cosineRadiusWorking(rigidOf(pair), asked.value.edgeAngle)];
  return solved ? [turnRadiusWorking(solved), ...rule] : rule;
}

function OwnReadings({ pair }: { pair: ChosenPair }): JSX.Element {
  const solved = grooveOf(pair);
  const carving = carvingOf(pair.pair);
  const rigid = rigidOf(pair);
  const { edgeAngle } = asked.value;
  const { rule } = turnOf(pair);
  const lacking = unbendable(pair) ? t('edge.needsStiffness') : t('edge.notSolvedYet');
  const small = { size: 'small', why: lacking } as const;
  return (
    <section class="reading-group">
      <h2>{pair.name}</h2>
      <Reading
        {...small}
        label={t('edge.byRule')}
        measure="radius"
        value={rule}
        why={t('edge.noSidecut')}
        working={() => [cosineRadiusWorking(rigid, edgeAngle), ...radiusWorkings(pair.pair)]}
      />
      {(['rear', 'front'] as const).map(part => (
        <Reading
          {...small}
          key={part}
          label={part === 'rear' ? t('edge.behindBoot') : t('edge.aheadOfBoot')}
          measure="radius"
          value={solved?.[part].radius ?? null}
          note={solved?.[part].tooShort ? t('edge.tooShort') : undefined}
          working={solved ? () => partRadiusWorking(solved, part) : undefined}
        />
      ))}
      <Reading
        {...small}
        label={t('edge.deepest')}
        measure="depth"
        value={solved?.maxPenetration ?? null}
        working={solved && carving.ok ? () => penetrationWorking(carving.ski, solved) : undefined}
      />
      {(['tip', 'tail'] as const).map(end => {
        const explained = solved && carving.ok ? twistWorking(carving.ski, solved, end) : null;
        return (
          <Reading
            {...small}
            key={end}
            label={t('edge.twistAt', { end })}
            measure="angle"
            value={solved ? (end === 'tip' ? solved.twistTip : solved.twistTail) : null}
            working={explained ? () => explained : undefined}
          />
        );
      })}
      <Reading
        {...small}
        label={t('carve.title.travel')}
        measure="depth"
        value={midSkiTravel(rigid.sidecutDepth, edgeAngle, rigid.camber)}
        working={() => travelWorking(rigid, edgeAngle)}
      />
      <Reading
        {...small}
        label={t('carve.title.biteAngle')}
        measure="angle"
        value={biteAngle(edgeAngle, rigid.baseBevel)}
        working={() => biteAngleWorking(rigid, edgeAngle)}
      />
    </section>
  );
}
