import type { JSX } from 'preact';
import { shapeWorkings, widthRemark } from '../../../core/shape/index.ts';
import type { Working } from '../../../core/working/index.ts';
import { radiusOf, sidecutOf } from '../../answers/index.ts';
import { PairReadings, Reading } from '../../kit/index.ts';
import { activePair, type ChosenPair, chosenPairs, inWords, perPair, ski, t } from '../../state/index.ts';

const workingsOf = perPair(pair => shapeWorkings(ski(pair)));

/** How the active pair's radius was measured; any pair's width stations that are not used. */
function noteOf(pair: ChosenPair, active: boolean): string | undefined {
  const { waistSource } = sidecutOf(pair.pair);
  const how = active
    ? t('shape.overContactLength', { waist: { key: `shape.waistSource.${waistSource}` } })
    : null;
  const unused = widthRemark(pair.ski);
  const remarks = [how, unused && inWords(unused)].filter(each => each !== null);
  return remarks.length > 0 ? remarks.join('. ') : undefined;
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
        label={t('shape.title.radius')}
        measure="radius"
        activeId={active.id}
        rows={chosenPairs.value.map(pair => ({
          id: pair.id,
          mark: pair.mark,
          of: pair.name,
          value: radiusOf(pair.pair),
          uncertainty: sidecutOf(pair.pair).radiusUncertainty,
          why: t('shape.noSidecut'),
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
          label={t('shape.title.depth')}
          measure="width"
          size="small"
          value={cut.depth}
          working={explained('shape.depth')}
        />
        <Reading
          label={t('shape.exactCircle')}
          measure="radius"
          size="small"
          value={cut.circleRadius}
          decimals={2}
          working={explained('shape.circleRadius')}
        />
        <Reading
          label={t('shape.leastSquaresCircle')}
          measure="radius"
          size="small"
          value={Number.isFinite(cut.fittedRadius) ? cut.fittedRadius : null}
          why={t('shape.noShallowArc')}
          decimals={2}
          working={explained('shape.fittedRadius')}
        />
        <Reading
          label={t('shape.title.waist')}
          measure="station"
          size="small"
          value={cut.waistStation}
          working={explained('shape.waistStation')}
        />
        <Reading
          label={t('shape.taper')}
          measure="angle"
          size="small"
          value={cut.taper}
          decimals={2}
          working={explained('shape.taper')}
        />
      </section>
      <p class="reading-hint">{t('shape.gripsHint')}</p>
    </>
  );
}
