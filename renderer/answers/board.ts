import { computed } from '@preact/signals';
import { inSi } from '../../core/conditions/index.ts';
import type { PlainKey, Sentence } from '../../core/language/index.ts';
import type { Pair, Ski } from '../../core/pair/index.ts';
import {
  type ChainQuestion,
  type CoachWords,
  coachWords,
  explainChain,
  holdingRadius,
  type TurnMoment,
  turnMoment,
  turnOf,
} from '../../core/run/index.ts';
import { standingLeg } from '../../core/skier/index.ts';
import type { Working } from '../../core/working/index.ts';
import {
  activePair,
  board,
  changeBoard,
  chosenPairs,
  conditions,
  PAIR_MARKS,
  type PairMark,
  project,
  ski,
  t,
} from '../state/index.ts';
import { turnSource } from './runs.ts';
import { radiusOf } from './sidecut.ts';

const ASKED = ['edgeDeg', 'speedKmh', 'massKg', 'slopeDeg', 'outerShare'] as const;

/** A ski on the board. */
export interface BoardSki {
  readonly id: string;
  readonly name: string;
  readonly pair: Pair;
  readonly ski: Ski;
  readonly mark: PairMark;
}

/** What the board says of one ski; null values where it has no radius to turn on. */
export interface BoardAnswer {
  readonly ski: BoardSki;
  readonly question: ChainQuestion;
  readonly moment: TurnMoment;
  readonly words: CoachWords;
  /** The edge lets go: the ski slides off its own arc. */
  readonly slides: boolean;
  /** Radius of the way it takes, m: its own arc, or the tightest that the edge carries where that lets go. */
  readonly path: number;
  /** Lean on that way, rad. */
  readonly lean: number;
  chain(): Working[];
  /** What the radius comes from, in a word or two and as a sentence's end. */
  readonly model: PlainKey;
  readonly source: Sentence;
}

/** Skis that carve a turn, shortest first: the positions of the ski slider. */
export const bySize = computed(() =>
  project.value.rack
    .filter(entry => radiusOf(entry.pair) !== null)
    .toSorted((a, b) => a.pair.lengthMm - b.pair.lengthMm || a.pair.name.localeCompare(b.pair.name)),
);

export const sideBySide = computed(() => board.value.sideBySide);

export type Place = 0 | 1;

/** Lays a ski on the board; the moves of a drag are one undo step. */
export function putSki(place: Place, id: string): void {
  const [first, second] = board.value.skis;
  changeBoard(t('board.ski'), { skis: place === 0 ? [id, second] : [first, id] }, `board-ski ${place}`);
}

/** A short slalom ski against the longest giant slalom ski, unless the room has chosen otherwise. */
function placedId(place: Place): string | null {
  const ids = bySize.value.map(entry => entry.id);
  const own = board.value.skis[place];
  if (own !== null && ids.includes(own)) return own;
  if (place === 0) {
    const active = activePair.value?.id;
    return active && ids.includes(active) ? active : (ids[0] ?? null);
  }
  const first = placedId(0);
  const chosen = chosenPairs.value.find(pair => pair.id !== first && ids.includes(pair.id));
  if (chosen) return chosen.id;
  const lead = bySize.value.find(entry => entry.id === first);
  const other = lead?.pair.discipline === 'GS' ? 'SL' : 'GS';
  const across = bySize.value.filter(entry => entry.pair.discipline === other && entry.id !== first);
  return (other === 'GS' ? across.at(-1) : across[0])?.id ?? ids.find(id => id !== first) ?? null;
}

export const boardSkis = computed<readonly BoardSki[]>(() => {
  const wanted: Place[] = sideBySide.value ? [0, 1] : [0];
  return wanted.flatMap(place => {
    const id = placedId(place);
    const entry = bySize.value.find(each => each.id === id);
    if (!entry) return [];
    const { pair } = entry;
    return [{ id: entry.id, name: pair.name, pair, ski: ski(pair), mark: PAIR_MARKS[place]! }];
  });
});

/** The chain for every ski on the board, at the fall line. */
export const boardAnswers = computed<readonly BoardAnswer[]>(() => {
  const c = conditions.value;
  const { edgeAngle, startSpeed, mass, slope, outerShare } = inSi(c, ASKED);
  return boardSkis.value.flatMap(one => {
    const { turn, model, words: source } = turnSource(one, c.hardnessNPerMm3);
    if (!turn) return [];
    const question: ChainQuestion = {
      turn: turnOf(turn),
      edgeAngle,
      speed: startSpeed,
      mass,
      slope,
      pastFallLine: 0,
      baseBevel: one.ski.baseBevel,
      outerShare,
      leg: standingLeg(c.heightM),
      sidecutRadius: radiusOf(one.pair)!,
    };
    const moment = turnMoment(question);
    const slides = moment.hold < 0;
    return [
      {
        ski: one,
        question,
        moment,
        slides,
        path: slides ? holdingRadius(question) : moment.radius,
        lean: slides ? moment.lean + moment.hold : moment.lean,
        words: coachWords(question),
        chain: () => explainChain(question),
        model,
        source,
      },
    ];
  });
});
