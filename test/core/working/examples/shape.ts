import { shapeWorkings } from '../../../../core/shape/index.ts';
import { skiWith } from '../../shape/ski.ts';

const widthStations = [0, 0.2, 0.5, 0.7, 1, 1.2, 1.4].map((x, i) => ({
  x,
  width: 0.066 + (x - 0.65) ** 2 / 13 + 0.2e-3 * Math.sin(5 * i),
}));

export const examples = {
  shapeWorkings: () => [
    ...shapeWorkings(skiWith({})),
    ...shapeWorkings(skiWith({ waistStation: 0.63 }), { uWidth: 0.1e-3, uLength: 0.5e-3 }),
    ...shapeWorkings(skiWith({ widthStations })),
    // Measured so well that the smoothed edge follows its waves.
    ...shapeWorkings(skiWith({ widthStations }), { uWidth: 0.02e-3 }),
    ...shapeWorkings(skiWith({ unusedWidthStations: 3 })),
  ],
};
