import { neededEdgeWorking, setRadiusWorking } from '../../../../core/course/index.ts';

export const examples = {
  setRadiusWorking: () => setRadiusWorking(11, 3.4),
  neededEdgeWorking: () => neededEdgeWorking(11, 3.4, 12.6) ?? [],
};
