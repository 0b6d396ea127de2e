import type { JSX } from 'preact';
import { beamOf } from '../../answers/index.ts';
import { flexSheet } from '../../files/index.ts';
import { editPair } from '../../rack/index.ts';
import type { ChosenPair } from '../../state/index.ts';
import { type Field, field } from './bench.ts';
import { asStations, STARTING, setStiffness, stationsOffBy, withOneMore } from './stiffness-edits.ts';

/** Says how the active pair's stiffness is stated and what can be done with it. */
export function StiffnessStrip({ active }: { active: ChosenPair }): JSX.Element {
  const which = field.value;
  const fault = beamOf(active.pair)[which === 'bending' ? 'bendingFault' : 'torsionFault'];
  const kind = active.pair[which]?.kind;
  const plain = kind === 'stations' || kind === 'uniform';
  return (
    <div class="stiffness-strip">
      <p class={fault || !plain ? undefined : 'strip-hint'}>
        <strong>{active.mark.letter}</strong>{' '}
        {fault ? <span class="problem">{fault}</span> : <Stated active={active} which={which} />}
        {!fault && active.pair[which] && active.pair.plate && '; the plate adds to it'}
      </p>
      {active.readOnly === undefined && <Actions active={active} which={which} />}
    </div>
  );
}

function Stated({ active, which }: { active: ChosenPair; which: Field }): JSX.Element {
  const stiffness = active.pair[which];
  switch (stiffness?.kind) {
    case undefined:
      return <>{which === 'torsion' ? 'rigid in torsion: no GJ given' : 'no EI given'}</>;
    case 'uniform':
      return <>the same everywhere: drag the grip</>;
    case 'stations':
      return <>{stiffness.stations.length} stations: drag, or focus one and ↑ ↓</>;
    case 'formula':
      return (
        <>
          formula <code>{stiffness.newtonM2}</code>, s from 0 at the rear contact point to 1
        </>
      );
    case 'layup':
      return <>worked out from {stiffness.layers.length} layers</>;
  }
}

function Actions({ active, which }: { active: ChosenPair; which: Field }): JSX.Element {
  const stiffness = active.pair[which];
  const profile = beamOf(active.pair).bare[which];
  const edit = (
    <button type="button" onClick={() => editPair(active.id)}>
      {stiffness?.kind === 'formula' ? 'Edit the formula' : 'Edit as numbers'}
    </button>
  );
  if (!stiffness) {
    return (
      <span class="strip-actions">
        <button
          type="button"
          onClick={() => setStiffness(active.id, which, { kind: 'uniform', newtonM2: STARTING[which] })}
        >
          Start with {STARTING[which]} N·m² everywhere
        </button>
      </span>
    );
  }
  return (
    <span class="strip-actions">
      {stiffness.kind === 'stations' && profile && stiffness.stations.length < 40 && (
        <button type="button" onClick={() => setStiffness(active.id, which, withOneMore(stiffness, profile))}>
          Add a station
        </button>
      )}
      {stiffness.kind !== 'stations' && profile && <TurnIntoStations active={active} which={which} />}
      {stiffness.kind === 'layup' ? (
        <button
          type="button"
          onClick={() => {
            flexSheet.value = 'layup';
          }}
        >
          Show the layers
        </button>
      ) : (
        edit
      )}
    </span>
  );
}

/** Replaces the formula or layup; says beforehand how near the stations come. */
function TurnIntoStations({ active, which }: { active: ChosenPair; which: Field }): JSX.Element {
  const profile = beamOf(active.pair).bare[which]!;
  const { contactLengthMm } = active.pair;
  const off = stationsOffBy(profile, contactLengthMm);
  const within = off < 0.0005 ? 'exact' : `within ${(Math.ceil(off * 1000) / 10).toFixed(1)} %`;
  const stiffness = asStations(profile, contactLengthMm);
  const what = active.pair[which]?.kind === 'layup' ? 'layers' : active.pair[which]?.kind;
  return (
    <button
      type="button"
      title={`Replaces the ${what}. The profile through 9 stations is ${within}. Undo brings the ${what} back.`}
      onClick={() => setStiffness(active.id, which, stiffness)}
    >
      Turn into 9 stations ({within})
    </button>
  );
}
