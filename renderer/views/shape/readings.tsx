import type { JSX } from 'preact';
import { shapeWorkings, widthRemark } from '../../../core/shape/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { radiusOf, sidecutOf } from '../../answers/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { activePair, type ChosenPair, chosenPairs, inWords, perPair, ski } from '../../state/index.ts';

const workingsOf = perPair(pair => shapeWorkings(ski(pair)));

/** How the active pair's radius was measured; any pair's width stations that are not used. */
function noteOf(pair: ChosenPair, active: boolean): string | undefined {
  const how = active ? `over the contact length, ${sidecutOf(pair.pair).waistSource}` : null;
  const unused = widthRemark(pair.ski);
  const told = [how, unused && inWords(unused)].filter(each => each !== null);
  return told.length > 0 ? told.join('. ') : undefined;
}

export function ShapeReadings(): JSX.Element | null {
  const active = activePair.value;
  if (!active) return null;
  const cut = sidecutOf(active.pair);
  const explained = (...keys: string[]): (() => readonly Working[]) | undefined => {
    const found = workingsOf(active.pair).filter(each => keys.includes(each.key));
    return found.length > 0 ? () => found : undefined;
  };
  return (
    <>
      <PairReadings
        label="Sidecut radius"
        measure="radius"
        activeId={active.id}
        rows={chosenPairs.value.map(pair => ({
          id: pair.id,
          mark: pair.mark,
          of: pair.name,
          value: radiusOf(pair.pair),
          uncertainty: sidecutOf(pair.pair).radiusUncertainty,
          why: 'The edge has no sidecut: the waist must be narrower than tip and tail.',
          note: noteOf(pair, pair.id === active.id),
          working: () =>
            workingsOf(pair.pair).filter(each =>
              ['shape.depth', 'shape.radius', 'shape.radiusUncertainty'].includes(each.key),
            ),
        }))}
      />
      <section class="reading-group">
        <h2>{active.name}</h2>
        <Reading
          label="Sidecut depth"
          measure="width"
          size="small"
          value={cut.depth}
          working={explained('shape.depth')}
        />
        <Reading
          label="Exact circle through three points"
          measure="radius"
          size="small"
          value={cut.circleRadius}
          decimals={2}
          working={explained('shape.circleRadius')}
        />
        <Reading
          label="Circle of least squares over the edge"
          measure="radius"
          size="small"
          value={Number.isFinite(cut.fittedRadius) ? cut.fittedRadius : null}
          why="The edge is no shallow arc."
          decimals={2}
          working={explained('shape.fittedRadius')}
        />
        <Reading
          label="True waist, from the rear contact point"
          measure="station"
          size="small"
          value={cut.waistStation}
          working={explained('shape.waistStation')}
        />
        <Reading
          label="Taper of either edge"
          measure="angle"
          size="small"
          value={cut.taper}
          decimals={2}
          working={explained('shape.taper')}
        />
      </section>
      <p class="reading-hint">
        Drag the grips on the ski, or focus one and press the arrow keys. Shift moves finely.
      </p>
    </>
  );
}
