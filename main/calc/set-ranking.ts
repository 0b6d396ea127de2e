import { wallStrengthOf } from '../../core/carve/index.ts';
import { fieldsOf, inSi, type Said, USUAL } from '../../core/conditions/index.ts';
import { gateTurns } from '../../core/course/index.ts';
import type { Sentence } from '../../core/language/index.ts';
import { type ManyRanking, type RankingQuestion, rankMany } from '../../core/line/index.ts';
import { type Pair, skiOf } from '../../core/pair/index.ts';
import { type Category, checkPair, editionText, type PairCheck } from '../../core/rules/index.ts';
import type { SlopeProfile } from '../../core/run/index.ts';
import { skierOf } from '../../core/skier/index.ts';
import { KMH } from '../../core/units/index.ts';
import { asking } from './fault.ts';
import type { SetQuestion } from './set-question.ts';
import type { KnownSurface } from './turn-surface.ts';

/** What a quickest run is asked beside the gates, their slope and the skier's greatest edge angle. */
export const RUN_ASKED = [
  ...fieldsOf('pole', 'body', 'legSpan', 'glide', 'model', 'wall'),
  ...fieldsOf('limits').filter(field => field !== 'edgeMostDeg'),
] as const;

/**
 * The pairs through the gates by their quickest runs, and by those at the pace asked about where one is.
 *
 * @param checks what the rules say of each pair, where they were asked
 */
export function quickestRanking(
  pairs: readonly Pair[],
  known: readonly KnownSurface[],
  checks: readonly (PairCheck | null)[],
  course: SetQuestion,
  profile: SlopeProfile,
  said: Partial<Said>,
  rigidAsked: boolean,
  onProgress: (share: number) => void,
): { readonly ranking: ManyRanking; readonly atPace: ManyRanking | null } {
  const { gates, asked } = course;
  const turns = gateTurns(gates);
  return asking(course.name, () => {
    const question: RankingQuestion = {
      conditions: {
        ...inSi({ ...USUAL, ...said }, [...fieldsOf('model', 'pole'), 'friction', 'airDensity']),
        skier: skierOf({ ...said, edgeMostDeg: asked.greatestEdgeDeg }),
        wallStrength: wallStrengthOf(said),
        slope: profile,
      },
      poles: gates.map(({ x, y }, i) => ({ x, y, turn: turns[i] > 0 ? 1 : -1 })),
      startSpeed: asked.startSpeedKmh * KMH,
    };
    const onSnow = pairs.map((pair, i) => ({
      ski: skiOf(pair),
      surface: known[i].surface,
      groove: known[i].groove,
      stiffnessUnknown: known[i].groove === null && !rigidAsked,
      barred: barredBy(checks[i]),
    }));
    const half = asked.speedKept ? 0.5 : 1;
    const ranking = rankMany(onSnow, question, { onProgress: share => onProgress(half * share) });
    if (!asked.speedKept) return { ranking, atPace: null };
    const pace = asked.speedKmh * KMH;
    const atPace = rankMany(
      onSnow,
      { ...question, pace, startSpeed: pace },
      { onProgress: share => onProgress(half * (1 + share)) },
    );
    return { ranking, atPace };
  });
}

/** The rules of the discipline the gates are set for, where it is known who races. */
export const ruleCheck = (pair: Pair, { discipline }: SetQuestion, category: Category | null) =>
  category && checkPair(pair, { discipline, category });

function barredBy(check: PairCheck | null): Sentence | undefined {
  if (check?.verdict !== 'fails') return undefined;
  const failed = check.items
    .filter(({ verdict }) => verdict === 'fails')
    .map(({ rule }) => editionText(rule));
  const discipline = { key: `discipline.${check.discipline}` } as const;
  return { key: 'line.failsRules', values: { discipline, rules: failed } };
}
