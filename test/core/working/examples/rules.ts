import {
  catalogueRadiusWorking,
  controlRadiusWorking,
  threeReadingsWorking,
} from '../../../../core/rules/index.ts';

const reading = {
  developedLength: 1.93,
  tailToWaist: 0.86,
  frontWidth: 0.0905,
  rearWidth: 0.083,
  waistWidth: 0.065,
};

export const examples = {
  catalogueRadiusWorking: () =>
    catalogueRadiusWorking({
      discipline: 'SL',
      lengthMm: 1650,
      contactLengthMm: 1440,
      tipWidthMm: 118,
      waistWidthMm: 66,
      tailWidthMm: 103,
    }),
  controlRadiusWorking: () => controlRadiusWorking(reading),
  threeReadingsWorking: () =>
    threeReadingsWorking([0.0922, 0.0917, 0.0914].map(frontWidth => ({ ...reading, frontWidth }))),
};
