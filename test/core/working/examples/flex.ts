import { flexWorkings, layupSection, layupWorkings } from '../../../../core/flex/index.ts';
import { skiOf } from '../../../../core/pair/index.ts';
import { demoPairs } from '../../../../renderer/demo/demo-pairs.ts';

const sides = {
  edges: { widthMm: 2, heightMm: 2, youngsGPa: 208, shearGPa: 80, densityGPerCm3: 7.85 },
  sidewalls: { widthMm: 5, youngsGPa: 2.2, shearGPa: 0.8, densityGPerCm3: 1.05 },
};

export const examples = {
  layupWorkings: () =>
    demoPairs.flatMap(pair => {
      if (pair.bending?.kind !== 'layup') return [];
      const sided = skiOf({ ...pair, bending: { ...pair.bending, ...sides } });
      return [skiOf(pair), sided].flatMap(({ bending, waistWidth }) =>
        bending?.kind === 'layup' ? layupWorkings(layupSection(bending.layup, waistWidth, 0.6)) : [],
      );
    }),
  flexWorkings: () =>
    demoPairs.flatMap(pair => {
      const ski = skiOf(pair);
      const question = { loads: [50, 240], span: 0.8 * ski.contactLength, at: 0.55 * ski.contactLength };
      return [...flexWorkings(ski), ...flexWorkings(ski, question), ...flexWorkings(ski, { loads: [0] })];
    }),
};
