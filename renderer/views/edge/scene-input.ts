import { inSi } from '../../../core/conditions/index.ts';
import { formatQuantity } from '../../../core/units/index.ts';
import { asked, formOf, grooveOf, turnOf } from '../../answers/index.ts';
import { styleOf } from '../../kit/index.ts';
import type { EdgeSceneInput, EdgeSki, ExtraArc } from '../../scene/index.ts';
import { activePair, type ChosenPair, chosenPairs, conditions, t, view } from '../../state/index.ts';
import { pageColour } from '../../theme/index.ts';
import { exaggeration } from './sheet-state.ts';

/** An arc this near the solved one carries no label of its own. */
const SAME_ARC = 0.04;

const radiusText = (metres: number) => formatQuantity(metres, 'radius', { system: view.value.system }).text;

/** What the scene shows of the present state; null while no turn can be drawn. Reads signals. */
export function sceneInput(): EdgeSceneInput | null {
  // The theme decides the colours read from the page.
  void view.value.theme;
  const active = activePair.value;
  if (!active) return null;
  const pairs = [active, ...chosenPairs.value.filter(pair => pair.id !== active.id)];
  const skis = pairs.flatMap(edgeSki);
  if (skis.length === 0 || !edgeSki(active).length) return null;
  const { slope, startSpeed } = inSi(conditions.value, ['slopeDeg', 'speedKmh']);
  return {
    slopeAngle: slope,
    skis: skis.slice(0, 2),
    extraArcs: [
      ...skis.slice(2).map(
        (each): ExtraArc => ({
          turnRadius: each.turnRadius,
          style: each.style,
          label: `${each.style.letter}  ${radiusText(each.turnRadius)}`,
        }),
      ),
      ...ruleArc(active),
    ],
    speed: Math.max(0.5, startSpeed),
    lengthsIn: view.value.system === 'imperial' ? 'ft' : 'm',
    exaggeration: exaggeration.value,
  };
}

function edgeSki(pair: ChosenPair): EdgeSki[] {
  const { radius } = turnOf(pair);
  if (radius === null) return [];
  const style = styleOf(pair.mark);
  return [
    {
      form: formOf(pair.pair),
      style,
      edgeAngle: asked.value.edgeAngle,
      bend: grooveOf(pair),
      turnRadius: radius,
      label: `${style.letter}  ${radiusText(radius)}`,
    },
  ];
}

function ruleArc(pair: ChosenPair): ExtraArc[] {
  const { solved, rule } = turnOf(pair);
  if (solved === null || rule === null) return [];
  const near = Math.abs(solved / rule - 1) < SAME_ARC;
  const style = { letter: '', colour: pageColour('--ink-soft'), dash: [0.06, 0.18] };
  return [{ turnRadius: rule, style, label: near ? '' : t('edge.scene.rule', { radius: radiusText(rule) }) }];
}

/** The picture in words. */
export function sceneWords(): string {
  const active = activePair.value;
  if (!active) return t('edge.scene.none');
  const { radius } = turnOf(active);
  const turn = t('edge.scene.turn', {
    kind: radius === null ? 'none' : 'arc',
    radius: radius === null ? '' : radiusText(radius),
  });
  const words = t('edge.scene.words', {
    name: active.name,
    edge: { quantity: 'angleDeg', value: conditions.value.edgeDeg },
    turn,
  });
  return `${words} ${t('common.sceneKeys')}`;
}
