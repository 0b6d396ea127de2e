import { LRUCache } from 'lru-cache';
import { type Begun, type RunAnswer, type RunPlan, runPlan } from './run-plan.ts';

/** A plan, and the name its last answer is kept by so that the next begins from it. */
export interface HillSkier {
  readonly id: string;
  readonly plan: RunPlan;
}

export interface HillQuestion {
  readonly skiers: readonly HillSkier[];
  /** A first look while a slider moves, see `RunOptions`. */
  readonly draft: boolean;
}

/** An answer as plain data: what the next run begins from stays with the thread. */
export type HillAnswer = Omit<Extract<RunAnswer, { ok: true }>, 'begun'> | Extract<RunAnswer, { ok: false }>;

/** Answers the next runs begin from. */
const begun = new LRUCache<string, Begun>({ max: 12 });

/** Work of the Slope view. */
export const hillJobs = {
  /** One run a skier, each begun from that skier's last of the same closeness. */
  skiRuns({ skiers, draft }: HillQuestion, progress: (share: number) => void): HillAnswer[] {
    return skiers.map(({ id, plan }, at) => {
      const key = `${id} ${plan.programme.kind} ${draft}`;
      const answer = runPlan(plan, begun.get(key), {
        draft,
        onProgress: share => progress((at + share) / skiers.length),
      });
      if (!answer.ok) return answer;
      const { begun: next, ...reported } = answer;
      begun.set(key, next);
      return reported;
    });
  },
};
