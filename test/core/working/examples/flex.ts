import { flexWorkings, layupSection, layupWorkings } from '../../../../core/flex/index.ts';
import { skiOf } from '../../../../core/pair/index.ts';
import { demoPairs } from '../../../../renderer/demo/index.ts';

const sides = { youngs: 2.2e9, shear: 0.8e9, density: 1050 };
const steel = { youngs: 208e9, shear: 80e9, density: 7850 };

export const examples = {
  layupWorkings: () =>
    demoPairs.flatMap(pair => {
      const { bending, waistWidth } = skiOf(pair);
      if (bending?.kind !== 'layup') return [];
      const sided = {
        ...bending.layup,
        edges: { ...steel, width: 2e-3, height: 2e-3 },
        sidewalls: { ...sides, width: 5e-3 },
      };
      return [bending.layup, sided].flatMap(layup => layupWorkings(layupSection(layup, waistWidth, 0.6)));
    }),
  flexWorkings: () => demoPairs.flatMap(pair => flexWorkings(skiOf(pair))),
};
