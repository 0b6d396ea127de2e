import { controlRadiusWorking } from '../../../../core/rules/index.ts';

export const examples = {
  controlRadiusWorking: () =>
    controlRadiusWorking({
      developedLength: 1.93,
      tailToWaist: 0.86,
      frontWidth: 0.0905,
      rearWidth: 0.083,
      waistWidth: 0.065,
    }),
};
