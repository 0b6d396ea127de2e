import { expose } from 'comlink';
import type { Run } from '../../../core/run/index.ts';
import { type RunAnswer, type RunPlan, runPlan } from './run-plan.ts';

/** The last run of each pair: the next one is looked for from there. */
const before: Run[] = [];

/** Runs go and come as plain data; typed arrays are copied. */
const server = {
  runs(plans: readonly RunPlan[]): RunAnswer[] {
    return plans.map((plan, place) => {
      const answer = runPlan(plan, before[place]);
      if (!answer.ok) return answer;
      if (answer.run) before[place] = answer.run;
      return { ok: true, track: answer.track };
    });
  },
};

export type RunServer = typeof server;

expose(server);
