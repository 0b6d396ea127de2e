import { expose } from 'comlink';
import { type RunAnswer, type RunPlan, runPlan } from './run-plan.ts';

/** Runs go and come as plain data; typed arrays are copied. */
const server = {
  runs(plans: readonly RunPlan[]): RunAnswer[] {
    return plans.map(plan => runPlan(plan));
  },
};

export type RunServer = typeof server;

expose(server);
