import { flexWorkings } from '../../../../core/flex/index.ts';
import { skiOf } from '../../../../core/pair/index.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';

export const examples = {
  flexWorkings: () => demoPairs.flatMap(pair => flexWorkings(skiOf(pair))),
};
