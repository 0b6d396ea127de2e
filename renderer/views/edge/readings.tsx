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
import { activePair, type ChosenPair, chosenPairs, perPair, ski } from '../../state/index.ts';
import { BootReadings } from './boot-readings.tsx';
import { Standing } from './standing.tsx';
import { whyThisTurn } from './why.ts';

const radiusWorkings = perPair(pair =>
  shapeWorkings(ski(pair)).filter(each => ['shape.depth', 'shape.radius'].includes(each.key)),
);

export function EdgeReadings(): JSX.Element | null {
  const active = activePair.value;
  if (!active) return null;
  return (
    <Standing class="edge-readings">
      <PairReadings
        label="Turn radius"
        measure="radius"
        activeId={active.id}
        rows={chosenPairs.value.map(pair => ({
          id: pair.id,
          mark: pair.mark,
          of: pair.name,
          value: turnOf(pair).radius,
          why: faultOf(pair) ?? 'Solving its groove …',
          note: pair.id === active.id ? whyThisTurn(pair) : unbendable(pair) ? 'cosine rule only' : undefined,
          working: () => turnWorkings(pair),
        }))}
      />
      <OwnReadings pair={active} />
      <BootReadings pair={active} />
    </Standing>
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
  const lacking = unbendable(pair) ? 'needs a bending stiffness' : 'not solved yet';
  const small = { size: 'small', why: lacking } as const;
  return (
    <section class="reading-group">
      <h2>{pair.name}</h2>
      <Reading
        {...small}
        label="By the cosine rule"
        measure="radius"
        value={rule}
        why="The edge has no sidecut."
        working={() => [cosineRadiusWorking(rigid, edgeAngle), ...radiusWorkings(pair.pair)]}
      />
      {(['rear', 'front'] as const).map(part => (
        <Reading
          {...small}
          key={part}
          label={part === 'rear' ? 'Edge behind the boot' : 'Edge ahead of the boot'}
          measure="radius"
          value={solved?.[part].radius ?? null}
          note={solved?.[part].tooShort ? 'loaded on too short a stretch to tell' : undefined}
          working={solved ? () => partRadiusWorking(solved, part) : undefined}
        />
      ))}
      <Reading
        {...small}
        label="Deepest in the snow"
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
            label={`Twist at the ${end}`}
            measure="angle"
            value={solved ? (end === 'tip' ? solved.twistTip : solved.twistTail) : null}
            working={explained ? () => explained : undefined}
          />
        );
      })}
      <Reading
        {...small}
        label="Mid-ski travel to full contact"
        measure="depth"
        value={midSkiTravel(rigid.sidecutDepth, edgeAngle, rigid.camber)}
        working={() => travelWorking(rigid, edgeAngle)}
      />
      <Reading
        {...small}
        label="Bite angle"
        measure="angle"
        value={biteAngle(edgeAngle, rigid.baseBevel)}
        working={() => biteAngleWorking(rigid, edgeAngle)}
      />
    </section>
  );
}
